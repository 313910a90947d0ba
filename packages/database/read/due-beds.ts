import type { DueBed } from '@almanac/contract/due'
import type { JobState } from '@almanac/records/job-state'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { FORECAST_IN_SERVICE } from './in-service.ts'
import { cursorOf, readCursor } from './page-key.ts'

export type DueQuery = {
  waterSupplyId?: string
  minAgeYears?: number
  minChance12Months?: number
  month?: string
  plannedMonth?: string
  sort: 'chance' | 'due' | 'age'
  limit: number
  cursor?: string
}

type Row = Omit<DueBed, 'tank' | 'job' | 'planned'> & {
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
}

/** Column, direction and cursor type of each order. Only leakproof comparisons, so that each walks its own index under row security. */
const ORDERS = {
  chance: { column: Prisma.raw('f.chance_12_months'), down: true, cast: Prisma.raw('float8') },
  due: { column: Prisma.raw('f.due50_day'), down: false, cast: Prisma.raw('date') },
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
  const found = await inCompany(
    scope,
    (tx) => tx.$queryRaw<Row[]>`
    with page as materialized (
      select f.*, ${column} as sort_value from bed_forecast f
      where f.company_id = ${scope.companyId}::uuid and f.due50_day is not null and ${FORECAST_IN_SERVICE} ${filters(query, today)} ${after(query)}
      order by ${column} ${direction}, f.id ${direction} limit ${query.limit + 1})
    select p.id, case when ${down} then to_jsonb(p.sort_value) else to_jsonb(p.sort_value::text) end as "sortValue", p.bed_id as "bedId", p.site_id as "siteId",
      s.label as "siteLabel", s.town, t.size_as_written as "sizeAsWritten", t.diameter_in as "diameterIn", t.height_in as "heightIn",
      t.nominal_grains as "nominalGrains", o.arrangement, b.resin_kind as "resinKind", b.volume_ft3 as "volumeFt3", b.gravel_lb as "gravelLb",
      b.began_earliest::text as "beganEarliest", b.began_latest::text as "beganLatest", b.began_as_written as "beganAsWritten", p.drivers,
      p.due10_day::text as "due10Day", p.due50_day::text as "due50Day", p.due90_day::text as "due90Day", p.chance_12_months as "chance12Months",
      p.chance_already_failed as "chanceAlreadyFailed", to_char(r.month, 'YYYY-MM') as "plannedMonth", to_char(r.earliest_month, 'YYYY-MM') as "earliestMonth",
      to_char(r.latest_month, 'YYYY-MM') as "latestMonth", j.id as "jobId", j.state as "jobState"
    from page p
    join site s on s.company_id = p.company_id and s.id = p.site_id
    join bed b on b.company_id = p.company_id and b.id = p.bed_id
    join tank t on t.company_id = p.company_id and t.id = b.tank_id
    join softener o on o.company_id = p.company_id and o.id = t.softener_id
    left join planned_rebed r on r.company_id = p.company_id and r.bed_id = p.bed_id
    left join lateral (select j.id, j.state from job j where j.company_id = p.company_id and j.bed_id = p.bed_id and j.kind = 'rebed'
      and j.state in ('proposed', 'booked', 'under-way', 'held') limit 1) j on true
    order by p.sort_value ${direction}, p.id ${direction}`,
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return { rows: rows.map(asDueBed), nextCursor: found.length > query.limit && last ? cursorOf(last.sortValue, last.id) : null }
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
  ...rest
}: Row): DueBed {
  return {
    ...rest,
    tank: { sizeAsWritten, diameterIn, heightIn, nominalGrains, twin: arrangement !== 'single' },
    planned: plannedMonth && earliestMonth && latestMonth ? { month: plannedMonth, earliestMonth, latestMonth } : null,
    job: jobId && jobState ? { id: jobId, state: jobState } : null,
  }
}
