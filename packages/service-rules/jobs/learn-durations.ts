import type { JobKind } from '@almanac/records/job-kind'
import { jobKindFacts, usualRebedMinutes } from './job-kinds.ts'

/** How long a visit took on site; null minutes where begin or end is not on record. */
export type VisitLength = { kind: JobKind; diameterIn: number | null; minutes: number | null }
/** Minutes on site: half of such visits take no longer than `middle`, eight of ten no longer than `longer`; learnt from so many visits, so many left out. */
export type Duration = { middle: number; longer: number; visits: number; leftOut: number }

/** The trade's first guess counts for as many visits of the firm's own; common practice, no source. */
const GUESS_COUNTS_AS = 8
/** Lengths vary by about a quarter from visit to visit; common practice, no source. */
const USUAL_SPREAD = 0.25
/** A length this many times as short or as long as usual is a tablet forgotten, not work. */
const FORGOTTEN = 5
/** Below this many standard deviations lie eight of ten (standard normal, Abramowitz and Stegun, table 26.5). */
const EIGHT_OF_TEN = 0.8416
const STEP_MINUTES = 5

/** How much a length varies: the standard deviation of its logarithm about its middle. */
export const spreadOf = ({ middle, longer }: Pick<Duration, 'middle' | 'longer'>): number => Math.log(longer / middle) / EIGHT_OF_TEN

const usualMinutes = (kind: JobKind, diameterIn: number | null): number =>
  kind === 'rebed' ? usualRebedMinutes(diameterIn) : jobKindFacts[kind].usualMinutes

const inSteps = (minutes: number) => Math.max(STEP_MINUTES, Math.round(minutes / STEP_MINUTES) * STEP_MINUTES)

/**
 * Lengths by kind, and for rebeds by size of tank, learnt from the firm's own visits: the logarithm of what a visit took over what is usual, its mean and spread
 * drawn towards the usual by `GUESS_COUNTS_AS` visits. Visits are planned with the middle: over a day long ones and short ones make up for each other, and
 * a day of later shares would stand half empty. Without visits it answers the usual.
 */
export function learnDurations(lengths: readonly VisitLength[]): (kind: JobKind, diameterIn: number | null) => Duration {
  const byClass = new Map<string, { logs: number[]; leftOut: number }>()
  for (const { kind, diameterIn, minutes } of lengths) {
    const usual = usualMinutes(kind, diameterIn)
    const key = `${kind} ${usual}`
    const seen = byClass.get(key) ?? { logs: [], leftOut: 0 }
    const log = Math.log((minutes ?? 0) / usual)
    if (Math.abs(log) <= Math.log(FORGOTTEN)) seen.logs.push(log)
    else seen.leftOut++
    byClass.set(key, seen)
  }
  return (kind, diameterIn) => {
    const usual = usualMinutes(kind, diameterIn)
    const { logs, leftOut } = byClass.get(`${kind} ${usual}`) ?? { logs: [], leftOut: 0 }
    const weight = GUESS_COUNTS_AS + logs.length
    const mean = logs.reduce((sum, one) => sum + one, 0) / weight
    const squares = logs.reduce((sum, one) => sum + (one - mean) ** 2, 0)
    const spread = Math.sqrt((GUESS_COUNTS_AS * USUAL_SPREAD ** 2 + squares) / weight)
    const middle = usual * Math.exp(mean)
    return { middle: inSteps(middle), longer: inSteps(middle * Math.exp(EIGHT_OF_TEN * spread)), visits: logs.length, leftOut }
  }
}
