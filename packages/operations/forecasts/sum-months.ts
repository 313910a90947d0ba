import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readMonthChances } from '@almanac/database/read/month-chances'
import { commandTools } from '@almanac/database/run-command'
import { countMonths, type MonthCount, type MonthCounter } from '@almanac/forecast/fleet/month-counts'
import { PARAMETER_NODES } from '@almanac/forecast/priors/parameter-nodes'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { CHANCE_PARTS, STORED_LENGTH, STORED_MONTHS } from './bed-months.ts'

const YEAR = 12

/** A supply of its own in the picture needs enough beds for a band to say something. */
const BEDS_FOR_A_PICTURE = 20

/** Years of the picture, each with the count of its twelve months together. */
const YEARS = STORED_MONTHS / YEAR

type Picture = { beds: number; months: MonthCounter; years: MonthCounter }

const emptyPicture = (): Picture => ({ beds: 0, months: countMonths(STORED_MONTHS), years: countMonths(YEARS) })

const nodeMonths = new Float64Array(STORED_LENGTH)
const nodeYears = new Float64Array(PARAMETER_NODES * YEARS)

/** Adds a bed: its chances by month and by year, at each node and averaged over them. */
function addBed(pictures: Picture[], chances: Uint16Array): void {
  const monthChances = new Float64Array(STORED_MONTHS)
  const yearChances = new Float64Array(YEARS)
  nodeYears.fill(0)
  for (let node = 0; node < PARAMETER_NODES; node++)
    for (let month = 0; month < STORED_MONTHS; month++) {
      const at = node * STORED_MONTHS + month
      const chance = (chances[at] ?? 0) / CHANCE_PARTS
      const year = Math.floor(month / YEAR)
      nodeMonths[at] = chance
      monthChances[month] = (monthChances[month] ?? 0) + chance / PARAMETER_NODES
      yearChances[year] = (yearChances[year] ?? 0) + chance / PARAMETER_NODES
      nodeYears[node * YEARS + year] = Math.min(1, (nodeYears[node * YEARS + year] ?? 0) + chance)
    }
  for (const picture of pictures) {
    picture.beds += 1
    picture.months.add({ monthChances, nodeMonthChances: nodeMonths })
    picture.years.add({ monthChances: yearChances, nodeMonthChances: nodeYears })
  }
}

/** First day of the month so many months after the month of `day`. */
function monthDay(day: string, later: number): Date {
  const [year, month] = day.split('-').map(Number)
  const index = (year ?? 0) * 12 + (month ?? 1) - 1 + later
  return dateOf(`${Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, '0')}-01`)
}

/** Reads every bed's chances into the pictures of the company and of each of its supplies. */
async function readPictures(tx: Tx, companyId: string) {
  const all = emptyPicture()
  const bySupply = new Map<string, Picture>()
  let newest: { runId: string; asOfDay: string } | null = null
  for await (const bed of readMonthChances(tx, companyId)) {
    if (!newest || bed.asOfDay > newest.asOfDay) newest = bed
    if (bed.chances.length !== STORED_LENGTH) continue
    const own = bed.waterSupplyId === null ? null : (bySupply.get(bed.waterSupplyId) ?? emptyPicture())
    if (own && bed.waterSupplyId) bySupply.set(bed.waterSupplyId, own)
    addBed(own ? [all, own] : [all], bed.chances)
  }
  return { newest, pictures: [[null, all] as const, ...[...bySupply].filter(([, picture]) => picture.beds >= BEDS_FOR_A_PICTURE)] }
}

/**
 * Sums the beds' stored chances into the month picture: for the company and for each supply with enough beds, 60 months and five years. The old picture is
 * replaced in the same transaction.
 */
export async function writeMonths(tx: Tx, companyId: string): Promise<void> {
  const { newest, pictures } = await readPictures(tx, companyId)
  await tx.forecastMonth.deleteMany({ where: { companyId } })
  if (!newest) return
  const { runId, asOfDay } = newest
  const data = pictures.flatMap(([waterSupplyId, picture]) => {
    const row = (count: MonthCount, months: number) => ({
      companyId,
      id: newId(),
      runId,
      waterSupplyId,
      month: monthDay(asOfDay, count.month * months),
      months,
      mean: count.mean,
      low: count.p10,
      middle: count.p50,
      high: count.p90,
      beds: picture.beds,
    })
    return [...picture.months.counts().map((count) => row(count, 1)), ...picture.years.counts().map((count) => row(count, YEAR))]
  })
  await tx.forecastMonth.createMany({ data })
  await commandTools(tx, { companyId, personId: null }, 'forecasts.sum-months', null).announce('forecast-months', companyId)
}

/** The month picture again, after some beds were forecast anew. */
export async function sumMonths({ companyId }: TaskPayloads['forecast-months']): Promise<void> {
  await inCompany({ companyId }, (tx) => writeMonths(tx, companyId), { timeoutMs: 120_000 })
}
