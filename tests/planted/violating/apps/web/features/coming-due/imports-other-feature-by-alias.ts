import { page } from '@/features/sites/site-page'

export const one = page
