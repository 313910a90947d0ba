import { oneOf } from './choices.ts'

/** Why an outlet that tests hard is right all the same. Haste is none. Common practice, no source. */
export const hardOutletReasons = ['mixed-on-purpose', 'salty-raw', 'iron-in-sample'] as const
/** Why the outlet could not be tested. */
export const untestedReasons = ['kit-failed', 'no-flow'] as const

export const outletReasons = [...hardOutletReasons, ...untestedReasons] as const
export type OutletReason = (typeof outletReasons)[number]

/** Whether a reason, as stored, fits: of an outlet that tested hard, or of one that could not be tested. */
export const outletReasonFits = (reason: string, tested: boolean): boolean =>
  oneOf<string>(tested ? hardOutletReasons : untestedReasons, reason) !== null
