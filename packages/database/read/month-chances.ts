import type { DueGrouping } from '@almanac/records/forecast-run'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { IN_SERVICE } from './in-service.ts'
import { readTownSpellings } from './town-spellings.ts'

const CHUNK = 2_000

export type BedMonths = {
  bedId: string
  runId: string
  asOfDay: string
  waterSupplyId: string | null
  town: string | null
  resinKind: string
  chanceAlreadyFailed: number
  /** Chances in 65,535ths, node by node. */
  chances: Uint16Array
}

/** Every bed's stored month chances, page by page in id order, so that a large company does not stand in memory at once. */
export async function* readMonthChances(tx: Tx, companyId: string): AsyncGenerator<BedMonths> {
  const towns = await readTownSpellings(tx, companyId)
  let after: string | undefined
  for (;;) {
    const rows = await tx.bedForecast.findMany({
      where: { companyId, bed: IN_SERVICE, ...(after ? { id: { gt: after } } : {}) },
      select: {
        ...{ id: true, bedId: true, runId: true, asOfDay: true, waterSupplyId: true, chanceAlreadyFailed: true, monthChances: true },
        ...{ site: { select: { town: true } }, bed: { select: { resinKind: true } } },
      },
      orderBy: { id: 'asc' },
      take: CHUNK,
    })
    for (const row of rows) {
      const { monthChances, chanceAlreadyFailed, asOfDay, site, bed, id: _id, ...rest } = row
      // A copy, since the driver's buffers need not begin at a multiple of two.
      const bytes = Uint8Array.from(monthChances)
      yield {
        ...rest,
        town: site.town && (towns.get(site.town) ?? null),
        resinKind: bed.resinKind,
        asOfDay: dayOf(asOfDay),
        chanceAlreadyFailed: chanceAlreadyFailed ?? 0,
        chances: new Uint16Array(bytes.buffer),
      }
    }
    after = rows.at(-1)?.id
    if (rows.length < CHUNK) return
  }
}

type GroupSize = { by: DueGrouping; key: string; beds: number }

/**
 * Beds of each supply, town and kind of resin among the forecasts, so that small ones can be counted together; the largest first. Towns are folded here and not in the
 * statement: of a company just imported the statistics know nothing, and a join with the towns then worked them out anew for each bed, two minutes for 3,000.
 */
export async function readGroupSizes(tx: Tx, companyId: string): Promise<GroupSize[]> {
  const towns = await readTownSpellings(tx, companyId)
  const rows = await tx.$queryRaw<{ supply: string | null; town: string | null; resin: string; beds: number }[]>`
    select f.water_supply_id::text as supply, s.town, b.resin_kind as resin, count(*)::int as beds from bed_forecast f
    join site s on s.company_id = f.company_id and s.id = f.site_id join bed b on b.company_id = f.company_id and b.id = f.bed_id
    where f.company_id = ${companyId}::uuid and b.ended_latest is null and b.archived_at is null group by 1, 2, 3`
  const sizes = new Map<string, GroupSize>()
  const add = (by: DueGrouping, key: string | null | undefined, beds: number) => {
    if (key == null) return
    const found = sizes.get(`${by} ${key}`)
    if (found) found.beds += beds
    else sizes.set(`${by} ${key}`, { by, key, beds })
  }
  for (const { supply, town, resin, beds } of rows) {
    add('supply', supply, beds)
    add('area', town && towns.get(town), beds)
    add('resin', resin, beds)
  }
  return [...sizes.values()].sort((a, b) => b.beds - a.beds || (a.key < b.key ? -1 : 1))
}
