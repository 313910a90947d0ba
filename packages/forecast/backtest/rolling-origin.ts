import { DAYS_PER_YEAR, type IsoDay, monthStart, parseDay } from '@almanac/units/calendar/day-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import type { BedRecord } from '../fit/bed-record.ts'
import { fitBedRecords } from '../fit/fit-bed-records.ts'
import { survivalAt } from '../lifetime/kaplan-meier.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { asKnownOn } from './as-known-on.ts'
import { type AgeRule, ageOnlyWeibull, fixedAge, kaplanMeierRule, knownLives } from './baselines.ts'
import { bedsOnOrigin, placeOf } from './beds-on-origin.ts'
import { brierScore, watching } from './brier.ts'
import {
  countOf,
  coverageOf,
  LEAST_WATCHED,
  type OriginCount,
  pairsOf,
  type ReliabilityBin,
  reliabilityBins,
  type WeighedPair,
} from './calibration.ts'

export type Method = 'forecast' | 'age-only Weibull' | 'Kaplan–Meier' | 'fixed age'

/** Months after each origin at which chances are held against what happened. */
const HORIZON_MONTHS = [6, 12, 18, 24] as const

/** The years the fixed-age rule gives a bed: the middle of what the trade says. Common practice, no source. */
const FIXED_AGE_YEARS = 12

export interface BacktestScore {
  readonly method: Method
  /** Mean Brier score over the horizons, weighted for censoring; lower is better, 0.25 is a coin. */
  readonly integratedBrier: number
}

export interface MissedBed {
  /** Place of the bed in the records given. */
  readonly record: number
  readonly originDay: IsoDay
  readonly chance24Months: number
  readonly failed: boolean
}

export interface Backtest {
  readonly scores: readonly BacktestScore[]
  /** Where outcomes fell in the forecast distributions, 0 to 1, spread at random over what is not known exactly: even when the forecast is honest. */
  readonly places: readonly number[]
  /** Share of places between 0.1 and 0.9: coverage of the 80% windows. */
  readonly coverage80: number
  /** Of coverage80, a bed's places on several origins taken as one witness. */
  readonly coverageStandardError: number
  readonly counts: readonly OriginCount[]
  readonly reliability: readonly ReliabilityBin[]
  readonly worst: readonly MissedBed[]
  readonly bedsScored: number
}

export interface BacktestOptions {
  /** Most beds forecast on each origin; more are sampled by `random`. Default all. */
  readonly mostBeds?: number
  /** The day of the records, up to which customers who did not call are taken to have a working bed. Default: the last day on record. */
  readonly asOfDay?: IsoDay
  /** Parameters known beforehand in place of a fit on each origin: what perfect knowledge would reach in a simulation. */
  readonly known?: ForecastParameters
}

/**
 * Stands on each origin day with what was known then, fits, forecasts the beds in service, and holds it against what came. Baselines learn from the same
 * records. `random` spreads the places of censored outcomes. Origins should be firsts of months; records need visitDays to know the past.
 */
export function backtest(
  records: readonly BedRecord[],
  prior: ForecastParameters,
  origins: readonly IsoDay[],
  random: () => number,
  options: BacktestOptions = {},
): Result<Backtest> {
  const totals = new Map<Method, { sum: number; weight: number }[]>()
  const places: number[] = []
  const misses: (MissedBed & { error: number })[] = []
  const placesByRecord = new Map<number, number[]>()
  const counts: OriginCount[] = []
  const reliability: WeighedPair[] = []
  let bedsScored = 0
  const asOf = (options.asOfDay === undefined ? null : parseDay(options.asOfDay)) ?? lastDayOf(records)
  for (const originDay of origins) {
    const origin = parseDay(originDay)
    if (origin === null) return refuse(`The origin “${originDay}” isn’t a real date. Type it as YYYY-MM-DD.`)
    const known = records.map((record) => asKnownOn(record, originDay))
    const parameters = options.known ?? fittedOn(known, prior, originDay)
    const beds = bedsOnOrigin(known, parameters, originDay, origin, asOf, options.mostBeds ?? Number.POSITIVE_INFINITY, random)
    const lives = knownLives(records, originDay, prior)
    const rules: [Method, AgeRule | null][] = [
      ['forecast', null],
      ['age-only Weibull', ageOnlyWeibull(lives) ?? fixedAge(FIXED_AGE_YEARS)],
      ['Kaplan–Meier', kaplanMeierRule(lives)],
      ['fixed age', fixedAge(FIXED_AGE_YEARS)],
    ]
    const watch = watching(
      beds.map((bed) => bed.outcome),
      origin,
    )
    for (const [method, rule] of rules) {
      const sums = totals.get(method) ?? HORIZON_MONTHS.map(() => ({ sum: 0, weight: 0 }))
      totals.set(method, sums)
      HORIZON_MONTHS.forEach((months, h) => {
        const day = monthStart(origin, months)
        if (survivalAt(watch, day - origin - 0.5) < LEAST_WATCHED) return
        const years = (day - origin) / DAYS_PER_YEAR
        const scored = beds.map((bed) => ({
          outcome: bed.outcome,
          chance: rule === null ? (bed.failedBy[months] as number) : rule(bed.seenAge, bed.originAge + years),
        }))
        const score = brierScore(scored, watch, origin, day)
        const sum = sums[h] as { sum: number; weight: number }
        sum.sum += score.sum
        sum.weight += score.weight
      })
    }
    for (const bed of beds) {
      const place = placeOf(bed, origin, random)
      places.push(place)
      placesByRecord.set(bed.record, [...(placesByRecord.get(bed.record) ?? []), place])
      const chance = bed.failedBy[24] as number
      const day = monthStart(origin, 24)
      const failed = bed.outcome.by <= day
      if (failed || bed.outcome.after >= day)
        misses.push({ record: bed.record, originDay, chance24Months: chance, failed, error: Math.abs((failed ? 1 : 0) - chance) })
    }
    bedsScored += beds.length
    const count = countOf(beds, watch, origin, originDay)
    if (count !== null) counts.push(count)
    reliability.push(...pairsOf(beds, watch, origin))
  }
  if (![...totals.values()].some((sums) => sums.some(({ weight }) => weight > 0)) && bedsScored > 0)
    return refuse('Too few beds were seen for half a year after these dates, so there’s nothing to compare the forecast with.')
  if (bedsScored === 0) return refuse('No bed was in service on any of these dates, so there’s nothing to compare the forecast with.')
  return ok({
    scores: [...totals].map(([method, sums]) => ({
      method,
      integratedBrier: meanOf(sums.filter(({ weight }) => weight > 0).map(({ sum, weight }) => sum / weight)),
    })),
    places,
    ...coverageOf(places, placesByRecord),
    counts,
    reliability: reliabilityBins(reliability),
    worst: misses
      .sort((a, b) => b.error - a.error)
      .slice(0, 10)
      .map(({ error: _error, ...bed }) => bed),
    bedsScored,
  })
}

/** The last day on which anything is on record. */
function lastDayOf(records: readonly BedRecord[]): number {
  return records.reduce(
    (most, { end, lastSeenDay }) => Math.max(most, parseDay(end?.latestDay ?? lastSeenDay ?? '') ?? most),
    Number.NEGATIVE_INFINITY,
  )
}

function fittedOn(records: readonly BedRecord[], prior: ForecastParameters, originDay: IsoDay): ForecastParameters {
  const fit = fitBedRecords(records, prior, originDay, `backtest-${originDay}`)
  return fit.ok ? fit.value.parameters : prior
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
