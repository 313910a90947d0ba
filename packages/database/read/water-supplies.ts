import type { SupplyPage, SupplyPeriodRow, SupplyRow } from '@almanac/contract/water'
import { notFound } from '@almanac/runtime/errors'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { FORECAST_IN_SERVICE, IN_SERVICE } from './in-service.ts'
import { cursorOf, readCursor } from './page-key.ts'

const PERIODS = { where: { withdrawnAt: null }, orderBy: { fromDay: { sort: 'desc', nulls: 'last' } } } as const

type StoredPeriod = Prisma.SupplyPeriodGetPayload<object>

function periodRow(row: StoredPeriod): SupplyPeriodRow {
  return {
    id: row.id,
    version: row.version,
    fromDay: dayOf(row.fromDay),
    disinfectant: row.disinfectant as SupplyPeriodRow['disinfectant'],
    residualMgL: row.residualMgL,
    hardnessGpg: row.hardnessGpg,
    ironMgL: row.ironMgL,
    entered: row.entered as SupplyPeriodRow['entered'],
    source: row.source,
  }
}

/** The period in force on `today`: the latest that has begun. */
function present(periods: StoredPeriod[], today: string): SupplyPeriodRow | null {
  const found = periods.find((one) => one.fromDay === null || (dayOf(one.fromDay) ?? '') <= today)
  return found ? periodRow(found) : null
}

/** The supplies by name, with what each delivers at present and how many sites it serves. */
export async function readSupplies(
  scope: Pick<Scope, 'companyId'>,
  query: { limit: number; cursor?: string },
  today: string,
): Promise<{ rows: SupplyRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, (tx) =>
    tx.waterSupply.findMany({
      where: { companyId, archivedAt: null, ...(after ? { name: { gt: after.sort } } : {}) },
      include: { periods: PERIODS, _count: { select: { sites: { where: { archivedAt: null } } } } },
      orderBy: { name: 'asc' },
      take: query.limit + 1,
    }),
  )
  const rows = found.slice(0, query.limit).map((one) => ({
    id: one.id,
    name: one.name,
    kind: one.kind as SupplyRow['kind'],
    sites: one._count.sites,
    present: present(one.periods, today),
  }))
  const last = rows.at(-1)
  return { rows, nextCursor: found.length > query.limit && last ? cursorOf(last.name, last.id) : null }
}

/** One supply: its dated history, and how far each change of it moved its beds' middle days. */
export async function readSupply(scope: Pick<Scope, 'companyId'>, waterSupplyId: string, today: string): Promise<SupplyPage> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const found = await tx.waterSupply.findFirst({
      where: { companyId, id: waterSupplyId, archivedAt: null },
      include: { periods: PERIODS, _count: { select: { sites: { where: { archivedAt: null } } } } },
    })
    if (!found) throw notFound('water supply')
    const bedsWatched = await tx.bedForecast.count({ where: { companyId, waterSupplyId, bed: IN_SERVICE } })
    const moves = await tx.$queryRaw<{ runId: string; at: Date; cause: string; beds: number; earlier: number; meanDays: number }[]>`
      select c.run_id as "runId", max(c.at) as at, min(c.cause) as cause, count(*)::int as beds,
        (count(*) filter (where c.to_due50 < c.from_due50))::int as earlier, avg(c.to_due50 - c.from_due50)::float8 as "meanDays"
      from forecast_change c join bed_forecast f on f.company_id = c.company_id and f.bed_id = c.bed_id
      where c.company_id = ${companyId}::uuid and f.water_supply_id = ${waterSupplyId}::uuid and c.cause = 'supply'
        and c.from_due50 is not null and c.to_due50 is not null and ${FORECAST_IN_SERVICE}
      group by c.run_id order by max(c.at) desc limit 10`
    return {
      id: found.id,
      version: found.version,
      name: found.name,
      kind: found.kind as SupplyRow['kind'],
      notes: found.notes,
      sites: found._count.sites,
      bedsWatched,
      present: present(found.periods, today),
      periods: found.periods.map(periodRow),
      moves: moves.map((move) => ({ ...move, at: move.at.toISOString() })),
    }
  })
}
