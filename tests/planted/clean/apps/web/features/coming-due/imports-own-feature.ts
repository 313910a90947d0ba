import { call } from '@/client/call'
import { page } from './page.ts'

export const both = { call, page }
