import type { DueBed } from '@almanac/contract/due'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { lastAnswer, TELLING, TO_CALL } from './desk.ts'
import { FORECAST_IN_SERVICE } from './in-service.ts'
import { cursorOf, readCursor } from './page-key.ts'
import { NOBODY_TO_CALL, readWhomToCall } from './whom-to-call.ts'

export type DueQuery = {
  waterSupplyId?: string
  minAgeYears?: number
  minChance12Months?: number
  month?: string
  plannedMonth?: string
  toCall?: boolean
  sort: 'chance' | 'due' | 'age' | 'failed' | 'telling'
  limit: number
  cursor?: string
}

type Row = Omit<DueBed, 'tank' | 'job' | 'planned' | 'whom' | 'answer'> & {
  id: string
  sortValue: string | number
  sizeAsWritten: string | null
  diameterIn: number | null
  heightIn: number | null
  nominalGrains: number | null
  arrangement: string
  plannedMonth: string | null
  earliestMonth: string | null
  latestMonth: string | null
  jobId: string | null
  jobState: JobState | null
  answeredAt: Date | null
  hardSinceDay: string | null
}

/** Column, direction and cursor type of each order. Only leakproof comparisons, so that each walks its own index under row security; what a call tells is worked out for all. */
const ORDERS = {
  chance: { column: Prisma.raw('f.chance_12_months'), down: true, cast: Prisma.raw('float8') },
  due: { column: Prisma.raw('f.due50_day'), down: false, cast: Prisma.raw('date') },
  failed: { column: Prisma.raw('f.chance_already_failed'), down: true, cast: Prisma.raw('float8') },
  telling: { column: Prisma.sql`(${TELLING})`, down: true, cast: Prisma.raw('float8') },
  age: { column: Prisma.raw('f.began_middle_day'), down: false, cast: Prisma.raw('date') },
}

function after(query: DueQuery): Prisma.Sql {
  if (!query.cursor) return Prisma.empty
  const { column, down, cast } = ORDERS[query.sort]
  const { sort, id } = down ? readCursor(query.cursor, 'number') : readCursor(query.cursor, 'string')
  const than = down ? Prisma.raw('<') : Prisma.raw('>')
  return Prisma.sql`and (${column}, f.id) ${than} (${sort}::${cast}, ${id}::uuid)`
}

function filters(query: DueQuery, today: string): Prisma.Sql {
  const parts: Prisma.Sql[] = []
  if (query.waterSupplyId) parts.push(Prisma.sql`and f.water_supply_id = ${query.waterSupplyId}::uuid`)
  if (query.minChance12Months !== undefined) parts.push(Prisma.sql`and f.chance_12_months >= ${query.minChance12Months}::float8`)
  if (query.minAgeYears !== undefined)
    parts.push(Prisma.sql`and f.began_middle_day <= ${addDays(today, -Math.round(query.minAgeYears * DAYS_PER_YEAR))}::date`)
  if (query.month)
    parts.push(
      Prisma.sql`and f.due50_day >= ${`${query.month}-01`}::date and f.due50_day < (${`${query.month}-01`}::date + interval '1 month')::date`,
    )
  if (query.plannedMonth)
    parts.push(
      Prisma.sql`and exists (select from planned_rebed r where r.company_id = f.company_id and r.bed_id = f.bed_id and r.month = ${`${query.plannedMonth}-01`}::date)`,
    )
  if (query.toCall) parts.push(Prisma.sql`and ${TO_CALL}`)
  return parts.length ? Prisma.join(parts, ' ') : Prisma.empty
}

/** The beds that come due, from the stored projection: one index walk for the page, then the names of its rows only. */
export async function readDueBeds(
  scope: Pick<Scope, 'companyId'>,
  query: DueQuery,
  today: string,
): Promise<{ rows: DueBed[]; nextCursor: string | null }> {
  const { column, down } = ORDERS[query.sort]
  const direction = down ? Prisma.raw('desc') : Prisma.raw('asc')
  return inCompany(scope, async (tx) => {
    const found = await tx.$queryRaw<Row[]>`
    with page as materialized (
      select f.*, ${column} as sort_value from bed_forecast f
      where f.company_id = ${scope.companyId}::uuid and f.due50_day is not null and ${FORECAST_IN_SERVICE} ${filters(query, today)} ${after(query)}
      order by ${column} ${direction}, f.id ${direction} limit ${query.limit + 1})
    select f.id, case when ${down} then to_jsonb(f.sort_value) else to_jsonb(f.sort_value::text) end as "sortValue", f.bed_id as "bedId", f.site_id as "siteId",
      o.id as "softenerId", a.at as "answeredAt", a.hard_since_day::text as "hardSinceDay",
      s.label as "siteLabel", s.town, t.size_as_written as "sizeAsWritten", t.diameter_in as "diameterIn", t.height_in as "heightIn",
      t.nominal_grains as "nominalGrains", o.arrangement, b.resin_kind as "resinKind", b.volume_ft3 as "volumeFt3", b.gravel_lb as "gravelLb",
      b.began_earliest::text as "beganEarliest", b.began_latest::text as "beganLatest", b.began_as_written as "beganAsWritten",
      f.due10_day::text as "due10Day", f.due50_day::text as "due50Day", f.due90_day::text as "due90Day", f.chance_12_months as "chance12Months",
      f.chance_already_failed as "chanceAlreadyFailed", to_char(r.month, 'YYYY-MM') as "plannedMonth", to_char(r.earliest_month, 'YYYY-MM') as "earliestMonth",
      to_char(r.latest_month, 'YYYY-MM') as "latestMonth", j.id as "jobId", j.state as "jobState"
    from page f
    join site s on s.company_id = f.company_id and s.id = f.site_id
    join bed b on b.company_id = f.company_id and b.id = f.bed_id
    join tank t on t.company_id = f.company_id and t.id = b.tank_id
    join softener o on o.company_id = f.company_id and o.id = t.softener_id
    left join planned_rebed r on r.company_id = f.company_id and r.bed_id = f.bed_id
    left join lateral (select j.id, j.state from job j where j.company_id = f.company_id and j.bed_id = f.bed_id and j.kind = any(${[...bedRenewingKinds]})
      and j.state in ('proposed', 'booked', 'under-way', 'held') limit 1) j on true
    left join lateral (${lastAnswer(today)}) a on true
    order by f.sort_value ${direction}, f.id ${direction}`
    const rows = found.slice(0, query.limit)
    const last = rows.at(-1)
    const whom = await readWhomToCall(
      tx,
      scope.companyId,
      rows.map((row) => row.siteId),
    )
    return {
      rows: rows.map((row) => ({ ...asDueBed(row), whom: whom.get(row.siteId) ?? NOBODY_TO_CALL })),
      nextCursor: found.length > query.limit && last ? cursorOf(last.sortValue, last.id) : null,
    }
  })
}

function asDueBed({
  id: _id,
  sortValue: _sort,
  sizeAsWritten,
  diameterIn,
  heightIn,
  nominalGrains,
  arrangement,
  plannedMonth,
  earliestMonth,
  latestMonth,
  jobId,
  jobState,
  answeredAt,
  hardSinceDay,
  ...rest
}: Row): Omit<DueBed, 'whom'> {
  return {
    ...rest,
    tank: { sizeAsWritten, diameterIn, heightIn, nominalGrains, twin: arrangement !== 'single' },
    planned: plannedMonth && earliestMonth && latestMonth ? { month: plannedMonth, earliestMonth, latestMonth } : null,
    answer: answeredAt ? { at: answeredAt.toISOString(), hardSinceDay } : null,
    job: jobId && jobState ? { id: jobId, state: jobState } : null,
  }
}
