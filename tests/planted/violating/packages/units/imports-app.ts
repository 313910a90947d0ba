import { page } from '../../apps/web/features/sites/site-page.ts'

export const one = page
