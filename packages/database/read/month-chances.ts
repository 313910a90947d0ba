import type { DueGrouping } from '@almanac/records/forecast-run'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
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

/** Every bed's stored month chances, page by page in id order, so that a large company does not stand in memory at once. */
export async function* readMonthChances(tx: Tx, companyId: string): AsyncGenerator<BedMonths> {
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
        town: site.town,
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
    with b as (select f.water_supply_id::text as supply, s.town as area, b.resin_kind as resin from bed_forecast f
      join site s on s.company_id = f.company_id and s.id = f.site_id join bed b on b.company_id = f.company_id and b.id = f.bed_id
      where f.company_id = ${companyId}::uuid and ${FORECAST_IN_SERVICE})
    select 'supply' as by, supply as key, count(*)::int as beds from b where supply is not null group by supply
    union all select 'area', area, count(*)::int from b where area is not null group by area
    union all select 'resin', resin, count(*)::int from b group by resin
    order by beds desc, key`
}
