import { TENTH_TO_TENTH } from '../numeric/tenth-to-tenth.ts'

export interface YearCount {
  /** The range in which eight of ten years' failures to come lie. */
  readonly low: number
  readonly high: number
  /** Σ u(1 − u) over beds, u the chance that a bed works today and fails within the year: how far the count would spread if the parameters were known. */
  readonly ownVariance: number
  /** Σ w(1 − w), w the chance that it has failed or will. */
  readonly workVariance: number
}

/**
 * By how many rebeds the range of next year's work (eight of ten) would narrow on average if answers took `gain` off its variance. The doubt about parameters, which beds
 * share, is what the range of failures to come is wider by than the beds' own chance; no answer is taken to shrink it.
 */
export function narrowedBy(gain: number, { low, high, ownVariance, workVariance }: YearCount): number {
  const shared = Math.max(0, ((high - low) / TENTH_TO_TENTH) ** 2 - ownVariance)
  const before = shared + workVariance
  return TENTH_TO_TENTH * (Math.sqrt(before) - Math.sqrt(Math.max(0, before - gain)))
}
