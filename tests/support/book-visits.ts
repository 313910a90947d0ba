import type { JobKind } from '../../packages/records/job-kind.ts'
import { askDatabase } from './ask-database.ts'
import { DEMO_PEOPLE } from './sign-in.ts'

/** The demo's technician. */
export function demoTechnician() {
  const me = DEMO_PEOPLE.find((one) => one.role === 'technician')
  if (!me) throw new Error('the demo has no technician')
  return me
}

/** The technician's sheet of today; one of their own where the demo has none, as on a Sunday. */
async function sheetOfToday(name: string): Promise<string> {
  const [found] = await askDatabase<{ id: string }>(
    `with who as (select w.id, w.company_id, (now() at time zone c.time_zone)::date as day from colleague w join company c on c.id = w.company_id where w.name = $1),
       found as (select d.id from who join crew_day d on d.company_id = who.company_id and d.day = who.day join crew_day_member m on m.crew_day_id = d.id and m.colleague_id = who.id limit 1),
       made as (insert into crew_day (company_id, id, day, name, starts_at, ends_at)
         select company_id, gen_random_uuid(), day, 'By night', now(), now() + interval '8 hours' from who where not exists (select from found) returning company_id, id),
       member as (insert into crew_day_member (company_id, id, crew_day_id, colleague_id)
         select made.company_id, gen_random_uuid(), made.id, who.id from made, who returning id)
     select id from found union all select id from made`,
    [name],
  )
  if (!found) throw new Error('the demo has no technician on its sheets')
  return found.id
}

export type Booked = { visitId: string; jobId: string; bedId: string | null; site: string; kind: JobKind }

/**
 * Visits of today for the technician, one of each kind and each at a place of its own, at an hour of the night when nobody works: other journeys keep theirs. `atBeds`: those that
 * are to a softener and its bed; the others are to the site alone. `from` is which of the demo's places the first one is at, `hour` the hour of UTC at which it begins,
 * `minutes` how long each takes.
 */
export async function bookAtNight(
  kinds: readonly JobKind[],
  { atBeds = [], from = 40, hour = 9, minutes = 20 }: { atBeds?: readonly JobKind[]; from?: number; hour?: number; minutes?: number } = {},
): Promise<Booked[]> {
  const { name } = demoTechnician()
  const sheet = await sheetOfToday(name)
  const made: Booked[] = []
  for (const [at, kind] of kinds.entries()) {
    const [one] = await askDatabase<Omit<Booked, 'kind'>>(
      `with who as (select id, company_id from colleague where name = $1),
         site_of as (select s.id as site_id, s.label, null::uuid as softener_id, null::uuid as bed_id from site s join who on who.company_id = s.company_id
           where not $6::boolean and s.archived_at is null and s.street is not null order by s.id offset $5::int + $3::int limit 1),
         bed_of as (select s.id as site_id, s.label, o.id as softener_id, b.id as bed_id from bed b join who on who.company_id = b.company_id
           join tank t on t.company_id = b.company_id and t.id = b.tank_id join softener o on o.company_id = t.company_id and o.id = t.softener_id
           join site s on s.company_id = o.company_id and s.id = o.site_id
           where $6::boolean and b.ended_latest is null and b.archived_at is null and o.archived_at is null and s.archived_at is null and t.diameter_in is not null and t.height_in is not null
             and (select count(*) from tank twin where twin.company_id = o.company_id and twin.softener_id = o.id) = 1 order by b.id offset $5::int + $3::int limit 1),
         place as (select * from site_of union all select * from bed_of),
         span as (select day::timestamptz + make_interval(hours => $7::int, mins => $8::int * $3::int) as starts_at from crew_day where id = $4::uuid),
         made_job as (insert into job (company_id, id, site_id, softener_id, bed_id, kind, state, minutes, crew_size, created_at)
           select who.company_id, gen_random_uuid(), site_id, softener_id, bed_id, $2, 'booked', $8::int, 1, now() - interval '2 days' from who, place returning *),
         made_visit as (insert into visit (company_id, id, job_id, crew_day_id, starts_at, ends_at, state)
           select j.company_id, gen_random_uuid(), j.id, $4::uuid, span.starts_at, span.starts_at + make_interval(mins => $8::int), 'booked' from made_job j, span returning *),
         made_assignment as (insert into assignment (company_id, id, visit_id, colleague_id, starts_at, ends_at)
           select v.company_id, gen_random_uuid(), v.id, who.id, v.starts_at, v.ends_at from made_visit v, who returning id)
       select v.id as "visitId", v.job_id as "jobId", place.bed_id as "bedId", place.label as site from made_visit v, place`,
      [name, kind, at, sheet, from, atBeds.includes(kind), hour, minutes],
    )
    if (!one) throw new Error(`a visit could not be made: ${kind}`)
    made.push({ kind, ...one })
  }
  return made
}
