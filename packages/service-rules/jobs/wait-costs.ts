import type { JobKind } from '@almanac/records/job-kind'

export interface WaitCost {
  /** What a day of waiting is worth, in minor units of a currency like the dollar; common practice, no source. */
  minorPerDay: number
  because: string
}

/**
 * Kinds of job that press from the day they are known, and why. An hour of a crew on the road costs about 60 dollars: an emergency goes before any detour that
 * a day holds, a repair before one of about two hours. What is not here waits by its due window and the risk of its bed.
 */
export const waitCosts: Readonly<Partial<Record<JobKind, WaitCost>>> = {
  emergency: { minorPerDay: 50_000, because: 'water runs where it shouldn’t, or there is none' },
  repair: { minorPerDay: 15_000, because: 'no soft water until somebody comes' },
  'warranty-return': { minorPerDay: 10_000, because: 'our own work doesn’t hold' },
}
