import type { OriginCount } from './calibration.ts'

/** Share of past years that a range of eight in ten must hold at least; six of eight. */
const MUST_HOLD = 0.75

/** Fewer years say nothing of ranges: one of two lies outside a right one every third time. */
const LEAST_YEARS = 4

/** A range is held to lie at least so far on each side of its middle: half a bed, by which whole numbers round. */
const LEAST_REACH = 0.5

type PastYear = Pick<OriginCount, 'expected' | 'low' | 'high' | 'happened'>
interface Range {
  readonly mean: number
  readonly low: number
  readonly high: number
}

/** By how much a year's range would have had to be wider, on its own side, to hold what came in whole beds; 1 on its edge. */
function reachOf({ expected, low, high, happened }: PastYear): number {
  const came = Math.round(happened)
  const side = came > expected ? high - expected : expected - low
  return Math.abs(came - expected) / Math.max(LEAST_REACH, side)
}

/**
 * Factor by which today's ranges of a year's failures are widened so that the same factor would have let past ones hold as often as they say; 1 where they did, or too
 * few years are looked back on. Never below 1: a lucky past narrows nothing.
 */
export function widening(years: readonly PastYear[]): number {
  if (years.length < LEAST_YEARS) return 1
  const reaches = years.map(reachOf).sort((a, b) => a - b)
  return Math.max(1, reaches[Math.ceil(MUST_HOLD * years.length) - 1] ?? 1)
}

/** A range with both sides longer by the factor, in whole beds. */
export function widened<T extends Range>(range: T, factor: number): T {
  if (factor === 1) return range
  const low = Math.max(0, Math.floor(range.mean - factor * Math.max(LEAST_REACH, range.mean - range.low)))
  return { ...range, low, high: Math.ceil(range.mean + factor * Math.max(LEAST_REACH, range.high - range.mean)) }
}
