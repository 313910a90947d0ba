import { type IsoDay, monthStart } from '@almanac/units/calendar/day-number'
import { countMonths } from '../fleet/month-counts.ts'
import { countQuantile } from '../fleet/poisson-binomial.ts'
import { type SurvivalStep, survivalAt } from '../lifetime/kaplan-meier.ts'
import type { ScoredForecast } from './beds-on-origin.ts'
import { failedBy } from './outcome.ts'

/** Failures in the twelve months after an origin among the beds scored there: expected then, with the band that the front page would have shown, and what came. */
export interface OriginCount {
  readonly originDay: IsoDay
  readonly beds: number
  readonly expected: number
  /** One count in ten lies below and above, by chance and by the doubt about how long beds last. */
  readonly low: number
  readonly high: number
  /** Weighted for beds lost from sight; a failure between two visits counts by the share of its interval that lies within. */
  readonly happened: number
}

const COUNT_MONTHS = 12

/** Where fewer of the beds are still watched, those whose fate is known are mostly those that failed, and no weighting mends it. */
export const LEAST_WATCHED = 0.4

/** Null where too few beds are watched to the end of the twelve months. */
export function countOf(
  beds: readonly ScoredForecast[],
  watch: readonly SurvivalStep[],
  origin: number,
  originDay: IsoDay,
): OriginCount | null {
  const day = monthStart(origin, COUNT_MONTHS)
  if (survivalAt(watch, day - origin - 0.5) < LEAST_WATCHED) return null
  const counter = countMonths(1)
  let expected = 0
  for (const bed of beds) {
    const chance = Math.min(1, bed.failedBy[COUNT_MONTHS] as number)
    counter.add({ monthChances: [chance], nodeMonthChances: bed.nodeYear })
    expected += chance
  }
  const pairs = pairsOf(beds, watch, origin, COUNT_MONTHS)
  const weight = pairs.reduce((sum, pair) => sum + pair.weight, 0)
  const share = pairs.reduce((sum, pair) => sum + pair.failed * pair.weight, 0) / weight
  const counts = counter.distribution(0)
  return {
    originDay,
    beds: beds.length,
    expected,
    low: countQuantile(counts, 0.1),
    high: countQuantile(counts, 0.9),
    happened: share * beds.length,
  }
}

/** Share of outcomes between the 10 and the 90% point with its standard error, beds being the independent witnesses. */
export function coverageOf(
  places: readonly number[],
  byRecord: ReadonlyMap<number, readonly number[]>,
): { coverage80: number; coverageStandardError: number } {
  const inside = (place: number) => place >= 0.1 && place <= 0.9
  const coverage80 = places.filter(inside).length / places.length
  let square = 0
  for (const own of byRecord.values()) square += own.reduce((sum, place) => sum + (inside(place) ? 1 : 0) - coverage80, 0) ** 2
  return { coverage80, coverageStandardError: Math.sqrt(square) / places.length }
}

/** One bed's forecast chance for RELIABILITY_MONTHS and what came, weighted for censoring. */
export interface WeighedPair {
  readonly chance: number
  readonly failed: number
  readonly weight: number
}

export interface ReliabilityBin {
  /** Mean chance forecast in this bin, and the share that failed. */
  readonly chance: number
  readonly happened: number
  readonly beds: number
}

const RELIABILITY_MONTHS = 24
const BINS = 10

/** Beds whose fate so many months after the origin is known; none where too few are watched so long. */
export function pairsOf(
  beds: readonly ScoredForecast[],
  watch: readonly SurvivalStep[],
  origin: number,
  months: number = RELIABILITY_MONTHS,
): WeighedPair[] {
  const day = monthStart(origin, months)
  if (survivalAt(watch, day - origin - 0.5) < LEAST_WATCHED) return []
  return beds.flatMap((bed) => {
    const failed = failedBy(bed.outcome, day)
    if (failed === null) return []
    const until = bed.outcome.by <= day ? bed.outcome.by - origin - 0.5 : day - origin - 0.5
    return [{ chance: Math.min(1, bed.failedBy[months] as number), failed, weight: 1 / Math.max(survivalAt(watch, until), 0.05) }]
  })
}

/** Tenths of the forecast chances from low to high, each with as many beds: what was said against what came. */
export function reliabilityBins(pairs: readonly WeighedPair[]): ReliabilityBin[] {
  const sorted = [...pairs].sort((a, b) => a.chance - b.chance)
  return Array.from({ length: BINS }, (_, bin) => {
    const own = sorted.slice(Math.floor((bin * sorted.length) / BINS), Math.floor(((bin + 1) * sorted.length) / BINS))
    const weight = own.reduce((sum, pair) => sum + pair.weight, 0)
    const mean = (of: (pair: WeighedPair) => number) => own.reduce((sum, pair) => sum + of(pair) * pair.weight, 0) / weight
    return { chance: mean((pair) => pair.chance), happened: mean((pair) => pair.failed), beds: own.length }
  }).filter(({ beds }) => beds > 0)
}
