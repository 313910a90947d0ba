import type { Check } from './check-types.ts'
import { SITE_CHECKS } from './checks-site.ts'
import { TELEPHONE_CHECKS } from './checks-telephone.ts'

/** All checks: what can be asked first, what needs the valve off last. */
export const CHECKS: readonly Check[] = [...TELEPHONE_CHECKS, ...SITE_CHECKS]
