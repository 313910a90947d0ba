import type { DriverKey } from '@almanac/records/forecast-driver'
import { civilDate, DAYS_PER_YEAR, isoDay } from '@almanac/units/calendar/day-number'
import { type AgeingParts, ageingParts, REFERENCE } from '../exposure/acceleration.ts'
import type { Saying } from '../exposure/speaking.ts'
import type { TracedSegment } from '../exposure/water-history.ts'
import type { ParameterValues } from '../priors/forecast-parameters.ts'
import type { Driver } from './bed-forecast-types.ts'
import type { ReadBed } from './read-input.ts'

const PARTS: readonly (readonly [keyof AgeingParts, DriverKey])[] = [
  ['freeChlorine', 'free-chlorine'],
  ['chloramine', 'chloramine'],
  ['iron', 'iron'],
  ['crosslink', 'crosslink'],
  ['throughput', 'throughput'],
  ['temperature', 'temperature'],
  ['supply', 'supply'],
]

/** Shares too small to tell anybody. */
const NOTICEABLE_YEARS = 0.05

interface Run {
  readonly key: DriverKey
  readonly from: number
  to: number
  years: number
}

/**
 * Years that each cause takes (positive) or gives (negative) between `begin` and `horizon`: a segment of Δt years at rate a costs Δt(a − 1), split in
 * proportion to the causes' logarithms (the logarithmic-mean split, Ang 2004), which adds up exactly and does not depend on any order.
 * `scale` brings years over a longer horizon back to those of a typical life.
 */
export function drivers(bed: ReadBed, values: ParameterValues, begin: number, horizon: number, scale: number): Driver[] {
  const runs: Run[] = []
  for (const segment of bed.segments) {
    const from = Math.max(segment.from, begin)
    const to = Math.min(segment.to, horizon)
    if (to <= from) continue
    const parts = ageingParts(values, bed.traits, segment)
    let total = 0
    for (const [part] of PARTS) total += parts[part]
    // (a − 1)/ln a, whose limit at a = 1 is 1.
    const slope = Math.abs(total) < 1e-9 ? 1 : Math.expm1(total) / total
    const years = (to - from) / DAYS_PER_YEAR
    for (const [part, key] of PARTS) {
      if (parts[part] !== 0) addToRun(runs, key, from, to, years * slope * parts[part] * scale)
    }
  }
  return runs
    .filter((run) => Math.abs(run.years) >= NOTICEABLE_YEARS)
    .sort((a, b) => Math.abs(b.years) - Math.abs(a.years))
    .map((run) => ({ key: run.key, yearsTaken: run.years, fromDay: isoDay(run.from), words: words(run, bed, begin, horizon) }))
}

function addToRun(runs: Run[], key: DriverKey, from: number, to: number, years: number): void {
  const run = runs.find((r) => r.key === key && r.to === from)
  if (run === undefined) runs.push({ key, from, to, years })
  else {
    run.to = to
    run.years += years
  }
}

function words(run: Run, bed: ReadBed, begin: number, horizon: number): string {
  return driverWords(spanWords(run, causeWords(run.key, bed), begin, horizon, bed.saying), run.years, bed.saying)
}

/** "carbon ahead since 2019: 0.8 years longer". */
export const driverWords = (cause: string, years: number, { say, fixed }: Saying): string =>
  say(years >= 0 ? 'shorter' : 'longer', { cause, years: fixed(Math.abs(years), 1) })

function spanWords(run: Run, cause: string, begin: number, horizon: number, { say }: Saying): string {
  const [from, to] = [run.from, run.to].map((day) => String(Number.isFinite(day) ? civilDate(day).year : ''))
  if (run.to >= horizon) return run.from > begin ? say('since', { cause, year: from ?? '' }) : cause
  return run.from > begin ? say('fromTo', { cause, from: from ?? '', to: to ?? '' }) : say('until', { cause, year: to ?? '' })
}

function causeWords(key: DriverKey, bed: ReadBed): string {
  const { segments, traits, saying } = bed
  const { say, share } = saying
  switch (key) {
    case 'free-chlorine':
      return say('cause/free-chlorine', { amount: range(segments, (s) => s.freeChlorineMgL, saying) })
    case 'chloramine':
      return say('cause/chloramine', { amount: range(segments, (s) => s.chloramineMgL, saying) })
    case 'iron':
      return say('cause/iron', { amount: range(segments, (s) => s.ironMgL, saying) })
    case 'crosslink':
      return say('cause/crosslink', { share: share(traits.crosslinkPercent / 100) })
    case 'throughput':
      return say((traits.gallonsPerDayPerFt3 ?? 0) > REFERENCE.gallonsPerDayPerFt3 ? 'cause/busy' : 'cause/little')
    case 'supply':
      return say((traits.supplyLog ?? 0) < 0 ? 'cause/sooner' : 'cause/later')
    default:
      return say('cause/temperature')
  }
}

function range(segments: readonly TracedSegment[], value: (segment: TracedSegment) => number, { say, amount }: Saying): string {
  let low = Number.POSITIVE_INFINITY
  let high = 0
  for (const segment of segments) {
    const v = value(segment)
    if (v <= 0) continue
    low = Math.min(low, v)
    high = Math.max(high, v)
  }
  return low === high ? say('mgL', { amount: amount(low) }) : say('mgLRange', { low: amount(low), high: amount(high) })
}
