import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readMonthChances } from '@almanac/database/read/month-chances'
import { commandTools } from '@almanac/database/run-command'
import { countMonths, type MonthCount, type MonthCounter } from '@almanac/forecast/fleet/month-counts'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { STORED_MONTHS } from './forecast-row.ts'

const YEAR = 12

/** A supply of its own in the picture needs enough beds for a band to say something. */
const BEDS_FOR_A_PICTURE = 20

type Picture = { beds: number; months: MonthCounter; year: MonthCounter }

const emptyPicture = (): Picture => ({ beds: 0, months: countMonths(STORED_MONTHS), year: countMonths(1) })

/** Averages over nodes by month, and the chance of the first twelve months together at each node. */
function summed(chances: Float32Array): { mean: Float64Array; yearMean: number; yearNodes: Float64Array } {
  const nodes = chances.length / STORED_MONTHS
  const mean = new Float64Array(STORED_MONTHS)
  const yearNodes = new Float64Array(nodes)
  let yearMean = 0
  for (let node = 0; node < nodes; node++) {
    let year = 0
    for (let month = 0; month < STORED_MONTHS; month++) {
      const chance = chances[node * STORED_MONTHS + month] ?? 0
      mean[month] = (mean[month] ?? 0) + chance / nodes
      if (month < YEAR) year += chance
    }
    yearNodes[node] = Math.min(1, year)
    yearMean += Math.min(1, year) / nodes
  }
  return { mean, yearMean, yearNodes }
}

function addBed(picture: Picture, chances: Float32Array): void {
  const { mean, yearMean, yearNodes } = summed(chances)
  picture.beds += 1
  picture.months.add({ monthChances: mean, nodeMonthChances: chances })
  picture.year.add({ monthChances: [yearMean], nodeMonthChances: yearNodes })
}

/** First day of the month so many months after the month of `day`. */
function monthDay(day: string, later: number): Date {
  const [year, month] = day.split('-').map(Number)
  const index = (year ?? 0) * 12 + (month ?? 1) - 1 + later
  return dateOf(`${Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, '0')}-01`)
}

/**
 * Sums the beds' stored chances into the month picture: for the company and for each supply with enough beds, 24 months and the first year. The
 * old picture is replaced in the same transaction.
 */
export async function sumMonths({ companyId }: TaskPayloads['forecast-months']): Promise<void> {
  await inCompany(
    { companyId },
    async (tx) => {
      const all = emptyPicture()
      const bySupply = new Map<string, Picture>()
      let newest: { runId: string; asOfDay: string } | null = null
      for await (const bed of readMonthChances(tx, companyId)) {
        if (!newest || bed.asOfDay >= newest.asOfDay) newest = bed
        if (bed.chances.length === 0) continue
        addBed(all, bed.chances)
        if (!bed.waterSupplyId) continue
        const own = bySupply.get(bed.waterSupplyId) ?? emptyPicture()
        bySupply.set(bed.waterSupplyId, own)
        addBed(own, bed.chances)
      }
      await tx.forecastMonth.deleteMany({ where: { companyId } })
      if (!newest) return
      const { runId, asOfDay } = newest
      const rows = (picture: Picture, waterSupplyId: string | null) => {
        const row = (count: MonthCount, months: number) => ({
          companyId,
          id: newId(),
          runId,
          waterSupplyId,
          month: monthDay(asOfDay, count.month),
          months,
          mean: count.mean,
          low: count.p10,
          middle: count.p50,
          high: count.p90,
          beds: picture.beds,
        })
        return [...picture.months.counts().map((count) => row(count, 1)), ...picture.year.counts().map((count) => row(count, YEAR))]
      }
      const pictures = [...bySupply].filter(([, picture]) => picture.beds >= BEDS_FOR_A_PICTURE)
      await tx.forecastMonth.createMany({ data: [...rows(all, null), ...pictures.flatMap(([id, picture]) => rows(picture, id))] })
      await commandTools(tx, { companyId, personId: null }, 'forecasts.sum-months', null).announce('forecast-months', companyId)
    },
    { timeoutMs: 120_000 },
  )
}
