import { page } from '../sites/site-page.ts'

export const one = page
