import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readGroupSizes, readMonthChances } from '@almanac/database/read/month-chances'
import { commandTools } from '@almanac/database/run-command'
import type { MonthCount } from '@almanac/forecast/fleet/month-counts'
import { dueGroupings } from '@almanac/records/forecast-run'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { STORED_LENGTH } from './bed-months.ts'
import { addToPictures, emptyPictures, groupPictures, type Pictures, wholePicture, YEAR } from './month-pictures.ts'

type Newest = { runId: string; asOfDay: string }

/** First day of the month so many months after the month of `day`. */
function monthDay(day: string, later: number): Date {
  const [year, month] = day.split('-').map(Number)
  const index = (year ?? 0) * 12 + (month ?? 1) - 1 + later
  return dateOf(`${Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, '0')}-01`)
}

/** Reads every bed's chances into the pictures of the company and of its groups. */
async function readPictures(tx: Tx, companyId: string) {
  const pictures = emptyPictures(await readGroupSizes(tx, companyId))
  let newest: Newest | null = null
  for await (const { waterSupplyId, town, resinKind, ...bed } of readMonthChances(tx, companyId)) {
    if (!newest || bed.asOfDay > newest.asOfDay) newest = bed
    if (bed.chances.length === STORED_LENGTH)
      addToPictures(pictures, { ...bed, keys: { supply: waterSupplyId, area: town, resin: resinKind } })
  }
  return { newest, pictures }
}

function monthRows(companyId: string, { runId, asOfDay }: Newest, pictures: Pictures) {
  const whole = wholePicture(pictures)
  const row = (count: MonthCount, months: number) => ({
    ...{ companyId, id: newId(), runId, month: monthDay(asOfDay, count.month * months), months, beds: whole?.months.beds ?? 0 },
    ...{ mean: count.mean, low: count.p10, middle: count.p50, high: count.p90 },
  })
  if (!whole) return []
  return [...whole.months.months.map((count) => row(count, 1)), ...whole.years.months.map((count) => row(count, YEAR))]
}

/** Mean and band to a ten-thousandth of a bed: what is stored is read by people. */
const banded = (counts: readonly MonthCount[]) => counts.map(({ mean, p10, p90 }) => [Math.round(mean * 1e4) / 1e4, p10, p90])

function groupRows(companyId: string, { runId, asOfDay }: Newest, pictures: Pictures) {
  const firstMonth = monthDay(asOfDay, 0)
  return dueGroupings.flatMap((by) =>
    groupPictures(pictures, by).map(({ months: { group, beds, overdueNow, months }, years }) => ({
      ...{ companyId, id: newId(), runId, by, key: group, beds, failedAlready: overdueNow, firstMonth },
      ...{ months: banded(months), years: banded(years.months) },
    })),
  )
}

/**
 * Sums the beds' stored chances into the month picture: 60 months and five years, for the company and for each supply, town and kind of resin with enough beds.
 * The old picture is replaced in the same transaction.
 */
export async function writeMonths(tx: Tx, companyId: string): Promise<void> {
  const { newest, pictures } = await readPictures(tx, companyId)
  await tx.forecastMonth.deleteMany({ where: { companyId } })
  await tx.forecastGroup.deleteMany({ where: { companyId } })
  if (!newest) return
  await tx.forecastMonth.createMany({ data: monthRows(companyId, newest, pictures) })
  await tx.forecastGroup.createMany({ data: groupRows(companyId, newest, pictures) })
  await commandTools(tx, { companyId, personId: null }, 'forecasts.sum-months', null).announce('forecast-months', companyId)
}

/** The month picture again, after some beds were forecast anew. */
export async function sumMonths({ companyId }: TaskPayloads['forecast-months']): Promise<void> {
  await inCompany({ companyId }, (tx) => writeMonths(tx, companyId), { timeoutMs: 120_000 })
}
