import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import type { Tx } from '../client.ts'

/** The newest so many are enough to learn from, however large the firm. */
const MOST = 4000
const YEARS_BACK_MS = 2 * DAYS_PER_YEAR * 86_400_000

type Row = { kind: string; diameterIn: number | null; startedAt: string | null; finishedAt: string | null }

/**
 * What the newest visits closed on a tablet in the last two years took on site, by its begin and end; null minutes where either is missing. `kind`: of this kind
 * only. Visits known from older books never had such times and are no part of it. In SQL, so that of the whole close-outs only two times are read.
 */
export async function readVisitLengths(tx: Tx, companyId: string, at: Date, kind: string | null = null) {
  const since = new Date(at.getTime() - YEARS_BACK_MS)
  const visits = await tx.$queryRaw<Row[]>`
    select j.kind, t.diameter_in as "diameterIn", v.close_out->>'startedAt' as "startedAt", v.close_out->>'finishedAt' as "finishedAt"
    from visit v
    join job j on j.company_id = v.company_id and j.id = v.job_id
    left join bed b on b.company_id = j.company_id and b.id = j.bed_id
    left join tank t on t.company_id = b.company_id and t.id = b.tank_id
    where v.company_id = ${companyId}::uuid and v.state = 'closed' and v.closed_at >= ${since} and v.close_out is not null
      and (${kind}::text is null or j.kind = ${kind})
    order by v.closed_at desc, v.id limit ${MOST}`
  return visits.map(({ startedAt, finishedAt, ...visit }) => ({
    ...visit,
    minutes: startedAt === null || finishedAt === null ? null : (Date.parse(finishedAt) - Date.parse(startedAt)) / 60_000,
  }))
}
