import { ok, type Result, refuse } from '@almanac/units/result'
import { forecastBed } from '../bed-forecast/forecast-bed.ts'
import { DAYS_PER_YEAR, type IsoDay, monthStart, parseDay } from '../calendar/day-number.ts'
import type { BedRecord } from '../fit/bed-record.ts'
import { fitBedRecords } from '../fit/fit-bed-records.ts'
import { lastSeenAsOf } from '../fit/read-record.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { type AgeRule, ageOnlyWeibull, fixedAge, kaplanMeierRule, knownLives } from './baselines.ts'
import { brierScore, watching } from './brier.ts'
import { type Outcome, outcomeOf } from './outcome.ts'

export type Method = 'forecast' | 'age-only Weibull' | 'Kaplan–Meier' | 'fixed age'

/** Months after each origin at which chances are held against what happened. */
export const HORIZON_MONTHS = [6, 12, 18, 24] as const

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
  /** Share of places between 0.1 and 0.9: coverage of the 80 % windows. */
  readonly coverage80: number
  readonly worst: readonly MissedBed[]
  readonly bedsScored: number
}

interface Scored {
  readonly record: number
  readonly outcome: Outcome
  readonly seenAge: number
  readonly originAge: number
  /** Chance of having failed by the end of each month after the origin, from 0 on. */
  readonly failedBy: readonly number[]
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
): Result<Backtest> {
  const totals = new Map<Method, { sum: number; weight: number }[]>()
  const places: number[] = []
  const misses: (MissedBed & { error: number })[] = []
  let bedsScored = 0
  for (const originDay of origins) {
    const origin = parseDay(originDay)
    if (origin === null) return refuse(`The origin “${originDay}” is no real date. Give it as YYYY-MM-DD.`)
    const fit = fitBedRecords(records, prior, originDay, `backtest-${originDay}`)
    const beds = bedsInService(records, fit.ok ? fit.value.parameters : prior, originDay, origin)
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
      places.push(placeOf(bed, origin, random))
      const chance = bed.failedBy[24] as number
      const day = monthStart(origin, 24)
      const failed = bed.outcome.by <= day
      if (failed || bed.outcome.after >= day)
        misses.push({ record: bed.record, originDay, chance24Months: chance, failed, error: Math.abs((failed ? 1 : 0) - chance) })
    }
    bedsScored += beds.length
  }
  if (bedsScored === 0) return refuse('No bed was in service on any of the origin days, so there is nothing to hold the forecast against.')
  return ok({
    scores: [...totals].map(([method, sums]) => ({
      method,
      integratedBrier: sums.reduce((mean, { sum, weight }) => mean + sum / weight / sums.length, 0),
    })),
    places,
    coverage80: places.filter((place) => place >= 0.1 && place <= 0.9).length / places.length,
    worst: misses
      .sort((a, b) => b.error - a.error)
      .slice(0, 10)
      .map(({ error: _error, ...bed }) => bed),
    bedsScored,
  })
}

function bedsInService(records: readonly BedRecord[], parameters: ForecastParameters, originDay: IsoDay, origin: number): Scored[] {
  return records.flatMap((record, index) => {
    const known = lastSeenAsOf(record, origin)
    if (known === null) return []
    const result = forecastBed({ ...record, ...known, asOfDay: originDay }, parameters, 'figures')
    if (!result.ok) return []
    const { value } = result
    const begin = ((parseDay(value.beginning.earliestDay) ?? origin) + (parseDay(value.beginning.latestDay) ?? origin)) / 2
    let sum = value.chanceAlreadyFailed
    const failedBy = [sum, ...value.monthChances.map((chance) => (sum += chance))]
    const age = (day: number) => Math.max(0, (day - begin) / DAYS_PER_YEAR)
    return [
      {
        record: index,
        outcome: outcomeOf(record, origin),
        seenAge: age(parseDay(value.lastSeenDay) ?? origin),
        originAge: age(origin),
        failedBy,
      },
    ]
  })
}

/** Where the outcome lies in the forecast distribution: even between the two days that hold it; above the last day seen for one not failed. */
function placeOf(bed: Scored, origin: number, random: () => number): number {
  const low = bed.outcome.after <= origin ? 0 : chanceBy(bed, origin, bed.outcome.after)
  const high = bed.outcome.by === Number.POSITIVE_INFINITY ? 1 : chanceBy(bed, origin, bed.outcome.by)
  return low + random() * (high - low)
}

function chanceBy(bed: Scored, origin: number, day: number): number {
  const months = Math.min(Math.max(0, (day - origin) / (DAYS_PER_YEAR / 12)), bed.failedBy.length - 1)
  const below = Math.floor(months)
  const low = bed.failedBy[below] as number
  return low + ((bed.failedBy[below + 1] ?? low) - low) * (months - below)
}
