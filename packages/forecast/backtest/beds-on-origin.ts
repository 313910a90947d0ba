import { DAYS_PER_YEAR, type IsoDay, parseDay } from '@almanac/units/calendar/day-number'
import type { BedForecast } from '../bed-forecast/bed-forecast-types.ts'
import { forecastBed } from '../bed-forecast/forecast-bed.ts'
import type { BedRecord } from '../fit/bed-record.ts'
import { lastSeenAsOf } from '../fit/read-record.ts'
import { CALLED_AFTER_DAYS } from '../fit/record-ways.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { type Outcome, outcomeOf } from './outcome.ts'

/** A bed in service on an origin day with what was forecast of it then and what came. */
export interface ScoredForecast {
  /** Place of the bed in the records given. */
  readonly record: number
  readonly outcome: Outcome
  readonly seenAge: number
  readonly originAge: number
  /** Chance of having failed by the end of each month after the origin, from 0 on. */
  readonly failedBy: readonly number[]
  /** The same after twelve months at each shared parameter node: doubt about how long beds last moves all of them together. */
  readonly nodeYear: Float64Array
}

/** Forecasts of the beds in service on an origin day with what came by `asOf`, at most `most` of them, taken evenly by `random` where there are more. */
export function bedsOnOrigin(
  records: readonly BedRecord[],
  parameters: ForecastParameters,
  originDay: IsoDay,
  origin: number,
  asOf: number,
  most: number,
  random: () => number,
): ScoredForecast[] {
  const inService: { record: BedRecord; index: number; lastSeenDay: IsoDay | null }[] = []
  records.forEach((record, index) => {
    // Not in service yet: the day it goes in lies ahead.
    if (record.beginning.earliestDay !== null && record.beginning.earliestDay > originDay) return
    const known = lastSeenAsOf(record, origin)
    if (known !== null) inService.push({ record, index, ...known })
  })
  return sampled(inService, most, random).flatMap(({ record, index, lastSeenDay }) => {
    const result = forecastBed({ ...record, lastSeenDay, asOfDay: originDay }, parameters, 'figures')
    if (!result.ok) return []
    const { value } = result
    const begin = ((parseDay(value.beginning.earliestDay) ?? origin) + (parseDay(value.beginning.latestDay) ?? origin)) / 2
    let sum = value.chanceAlreadyFailed
    const failedBy = [sum, ...value.monthChances.map((chance) => (sum += chance))]
    const age = (day: number) => Math.max(0, (day - begin) / DAYS_PER_YEAR)
    return [
      {
        record: index,
        outcome: outcomeOf(record, origin, asOf),
        // Rules of age alone are told as much: a customer's bed works while nobody called.
        seenAge: age(Math.max(parseDay(value.lastSeenDay) ?? origin, record.customerCalls === true ? origin - CALLED_AFTER_DAYS : 0)),
        originAge: age(origin),
        failedBy,
        nodeYear: yearAtNodes(value),
      },
    ]
  })
}

const YEAR = 12

function yearAtNodes({ chanceAlreadyFailed, monthChances, nodeMonthChances }: BedForecast): Float64Array {
  const months = monthChances.length
  return Float64Array.from({ length: nodeMonthChances.length / months }, (_, node) =>
    Math.min(
      1,
      nodeMonthChances.subarray(node * months, node * months + YEAR).reduce((sum, chance) => sum + chance, chanceAlreadyFailed),
    ),
  )
}

/** `most` of the items, each as likely as another, in their order (selection sampling, Knuth). */
function sampled<T>(items: readonly T[], most: number, random: () => number): readonly T[] {
  if (items.length <= most) return items
  const out: T[] = []
  items.forEach((item, i) => {
    if (random() * (items.length - i) < most - out.length) out.push(item)
  })
  return out
}

/** Where the outcome lies in the forecast distribution: even between the two days that hold it; above the last day seen for one not failed. */
export function placeOf(bed: ScoredForecast, origin: number, random: () => number): number {
  const low = bed.outcome.after <= origin ? 0 : chanceBy(bed, origin, bed.outcome.after)
  const high = bed.outcome.by === Number.POSITIVE_INFINITY ? 1 : chanceBy(bed, origin, bed.outcome.by)
  return low + random() * (high - low)
}

function chanceBy(bed: ScoredForecast, origin: number, day: number): number {
  const months = Math.min(Math.max(0, (day - origin) / (DAYS_PER_YEAR / 12)), bed.failedBy.length - 1)
  const below = Math.floor(months)
  const low = bed.failedBy[below] as number
  return low + ((bed.failedBy[below + 1] ?? low) - low) * (months - below)
}
