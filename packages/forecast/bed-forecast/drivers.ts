import type { DriverKey } from '@almanac/records/forecast-driver'
import { civilDate, DAYS_PER_YEAR, isoDay } from '@almanac/units/calendar/day-number'
import { percentInSentence } from '@almanac/units/format-number'
import { type AgeingParts, ageingParts, REFERENCE } from '../exposure/acceleration.ts'
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
  return `${causeWords(run.key, bed)}${spanWords(run, begin, horizon)}: ${yearsWords(run.years)}`
}

/** "3.1 years taken", "0.8 years given". */
export function yearsWords(years: number): string {
  return `${Math.abs(years).toFixed(1)} years ${years >= 0 ? 'taken' : 'given'}`
}

function spanWords(run: Run, begin: number, horizon: number): string {
  const since = run.from > begin ? ` since ${civilDate(run.from).year}` : ''
  if (run.to >= horizon) return since
  return run.from > begin ? ` from ${civilDate(run.from).year} to ${civilDate(run.to).year}` : ` until ${civilDate(run.to).year}`
}

function causeWords(key: DriverKey, bed: ReadBed): string {
  switch (key) {
    case 'free-chlorine':
      return `free chlorine ${range(bed.segments, (s) => s.freeChlorineMgL)}`
    case 'chloramine':
      return `chloramine ${range(bed.segments, (s) => s.chloramineMgL)}`
    case 'iron':
      return `iron ${range(bed.segments, (s) => s.ironMgL)}`
    case 'crosslink':
      return `${percentInSentence(bed.traits.crosslinkPercent / 100)} crosslink`
    case 'throughput':
      return (bed.traits.gallonsPerDayPerFt3 ?? 0) > REFERENCE.gallonsPerDayPerFt3 ? 'busy for its size' : 'little water for its size'
    case 'supply':
      return (bed.traits.supplyLog ?? 0) < 0
        ? 'beds on this supply fail sooner than water alone explains'
        : 'beds on this supply last longer than water alone explains'
    default:
      return 'water temperature'
  }
}

function range(segments: readonly TracedSegment[], value: (segment: TracedSegment) => number): string {
  let low = Number.POSITIVE_INFINITY
  let high = 0
  for (const segment of segments) {
    const v = value(segment)
    if (v <= 0) continue
    low = Math.min(low, v)
    high = Math.max(high, v)
  }
  return low === high ? `${round(low)} mg/L` : `${round(low)} to ${round(high)} mg/L`
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100)
}
