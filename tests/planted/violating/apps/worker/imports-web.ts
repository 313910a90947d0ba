import { page } from '../web/features/sites/site-page.ts'

export const one = page
