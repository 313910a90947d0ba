import type { DueGrouping } from '@almanac/records/forecast-run'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { Prisma } from '../generated/client.ts'
import { FORECAST_IN_SERVICE, IN_SERVICE } from './in-service.ts'

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

/** Towns by how most of their sites spell them: "LOWMOOR" and "lowmoor " are Lowmoor. Case and blanks about it are all that may differ. */
const townsOf = (
  companyId: string,
) => Prisma.sql`select t.town as written, m.town from (select distinct town from site where company_id = ${companyId}::uuid and town is not null) t join
  (select lower(btrim(town)) as folded, mode() within group (order by btrim(town)) as town from site
    where company_id = ${companyId}::uuid and town is not null group by 1) m
  on m.folded = lower(btrim(t.town))`

/** How each town that a site names is spelt by most. */
async function readTowns(tx: Tx, companyId: string): Promise<Map<string, string>> {
  const rows = await tx.$queryRaw<{ written: string; town: string }[]>(townsOf(companyId))
  return new Map(rows.map((row) => [row.written, row.town]))
}

/** Every bed's stored month chances, page by page in id order, so that a large company does not stand in memory at once. */
export async function* readMonthChances(tx: Tx, companyId: string): AsyncGenerator<BedMonths> {
  const towns = await readTowns(tx, companyId)
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

/** Beds of each supply, town and kind of resin among the forecasts, so that small ones can be counted together. */
export async function readGroupSizes(tx: Tx, companyId: string) {
  return tx.$queryRaw<{ by: DueGrouping; key: string; beds: number }[]>`
    with towns as (${townsOf(companyId)}),
    b as (select f.water_supply_id::text as supply, t.town as area, b.resin_kind as resin from bed_forecast f
      join site s on s.company_id = f.company_id and s.id = f.site_id left join towns t on t.written = s.town join bed b on b.company_id = f.company_id and b.id = f.bed_id
      where f.company_id = ${companyId}::uuid and ${FORECAST_IN_SERVICE})
    select 'supply' as by, supply as key, count(*)::int as beds from b where supply is not null group by supply
    union all select 'area', area, count(*)::int from b where area is not null group by area
    union all select 'resin', resin, count(*)::int from b group by resin
    order by beds desc, key`
}
