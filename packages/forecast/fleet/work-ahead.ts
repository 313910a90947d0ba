/** Failures to expect in a stretch of time, with the range that holds eight of ten outcomes. */
export type Band = { mean: number; low: number; high: number }

/**
 * Months over which beds that have failed unseen are taken to be rebedded, evenly: each household is asked first, and none of them waits for the night.
 * Common practice, no source.
 */
const UNSEEN_OVER_MONTHS = 12

/** Rebeds of each month from now on: those that will fail in it, and its share of `unseen`, which have failed already and nobody has noticed. */
export function workAhead<Month extends Band>(months: readonly Month[], unseen: number): Month[] {
  const share = unseen / UNSEEN_OVER_MONTHS
  return months.map((one, i) =>
    i < UNSEEN_OVER_MONTHS ? { ...one, mean: one.mean + share, low: one.low + share, high: one.high + share } : one,
  )
}
