import type { DueMonths } from '@almanac/contract/due'
import type { TrackRecord } from '@almanac/contract/forecasts'
import type { Scope } from '@almanac/database/in-company'
import { readDueMonths } from '@almanac/database/read/due-months'
import { readPastYears, readTrackRecord } from '@almanac/database/read/track-record'
import { widened, widening } from '@almanac/forecast/backtest/widening'

type Reader = Pick<Scope, 'companyId'>

/** The month picture, with the ranges of whole years as wide as past years' misses ask for. One supply's and one group's stay: the past was counted for the company. */
export async function dueMonths(scope: Reader, input: Parameters<typeof readDueMonths>[1], timeZone: string): Promise<DueMonths> {
  const picture = await readDueMonths(scope, input, timeZone)
  const widenedBy = input.waterSupplyId === undefined ? widening(await readPastYears(scope)) : 1
  return {
    ...picture,
    widenedBy,
    year: picture.year && widened(picture.year, widenedBy),
    years: picture.years.map((one) => widened(one, widenedBy)),
  }
}

/** The last look back, with what it makes of today's ranges. */
export async function trackRecord(scope: Reader): Promise<TrackRecord> {
  const record = await readTrackRecord(scope)
  return { ...record, widenedBy: widening(record.checked?.result?.counts ?? []) }
}
