'use client'
import { PageError } from '@/client/page-error'

export default PageError
