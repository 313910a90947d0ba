import { bedRenewingKinds } from '@almanac/records/job-kind'
import { addDays } from '@almanac/units/calendar/calendar-day'
import type { Tx } from '../client.ts'
import { dateOf } from '../days.ts'
import { Prisma } from '../generated/client.ts'
import { FORECAST_IN_SERVICE } from './in-service.ts'

/** Above this a bed has more likely failed than not. */
const MORE_LIKELY_THAN_NOT = 0.5

/** No rebed of the bed of `f` is proposed, booked, under way or held. */
const NO_REBED = Prisma.sql`not exists (select from job j where j.company_id = f.company_id and j.bed_id = f.bed_id and j.kind = any(${[...bedRenewingKinds]})
  and j.state in ('proposed', 'booked', 'under-way', 'held'))`

/** The bed of `f` is one whose household is to be asked whether the water is still soft. */
export const TO_CALL = Prisma.sql`f.chance_already_failed > ${MORE_LIKELY_THAN_NOT}::float8 and ${NO_REBED}`

/**
 * How much asking the household of `f` narrows next year's count of rebeds: its variance before, less the mean of what is left after the answer (law of total variance).
 * With p that it has failed and c that it fails within the year if not, an answer says 1 or leaves c: p (1 − p) (1 − c)². Nothing is told by one whose rebed is coming.
 */
export const TELLING = Prisma.sql`case when ${NO_REBED} then
  f.chance_already_failed * (1 - f.chance_already_failed) * (1 - f.chance_12_months) * (1 - f.chance_12_months) else 0 end`

/** What the calls that tell most would take off the variance of next year's count, and how that is made up: see `narrowedBy`. */
export async function readTelling(tx: Tx, companyId: string, calls: number) {
  const [row] = await tx.$queryRaw<{ calls: number; gain: number; ownVariance: number; workVariance: number }[]>`
    with bed_chance as (select f.chance_already_failed as p, f.chance_12_months as c, ${TELLING} as gain from bed_forecast f
      where f.company_id = ${companyId}::uuid and f.due50_day is not null and ${FORECAST_IN_SERVICE}),
    best as (select gain from bed_chance where gain > 0 order by gain desc limit ${calls})
    select (select count(*)::int from best) as calls, (select coalesce(sum(gain), 0)::float8 from best) as gain,
      coalesce(sum((1 - p) * c * (1 - (1 - p) * c)), 0)::float8 as "ownVariance",
      coalesce(sum((p + (1 - p) * c) * (1 - p) * (1 - c)), 0)::float8 as "workVariance" from bed_chance`
  return row ?? { calls: 0, gain: 0, ownVariance: 0, workVariance: 0 }
}

/** What was said on the telephone counts for so many days: after that they are asked again. */
const ANSWER_HOLDS_DAYS = 60

/** The last call about the softener of tank `t` at the site of `f` that said since when its water is hard, or that nobody answered; of two months before `today`. */
export const lastAnswer = (today: string) => Prisma.sql`select c.at, c.hard_since_day from phone_call c
  where c.company_id = f.company_id and c.site_id = f.site_id and c.softener_id = t.softener_id and c.at > ${dateOf(addDays(today, -ANSWER_HOLDS_DAYS))}
    and (c.hard_since_day is not null or c.follows = 'call-back') order by c.at desc limit 1`

type Counts = { beds: number; toCall: number; answered: number }

/** Beds in service, those to call about, and those of them answered since `dayBegan`, the instant `today` began, or told hard. */
export async function readToCall(tx: Tx, companyId: string, today: string, dayBegan: Date): Promise<Counts> {
  const [row] = await tx.$queryRaw<Counts[]>`
    select count(*)::int as beds, count(*) filter (where f.to_call)::int as "toCall",
      count(*) filter (where f.to_call and (f.hard_since_day is not null or f.at >= ${dayBegan}))::int as answered
    from (select a.at, a.hard_since_day, ${TO_CALL} as to_call
      from bed_forecast f join bed b on b.company_id = f.company_id and b.id = f.bed_id join tank t on t.company_id = b.company_id and t.id = b.tank_id
      left join lateral (${lastAnswer(today)}) a on f.chance_already_failed > ${MORE_LIKELY_THAN_NOT}::float8
      where f.company_id = ${companyId}::uuid and f.due50_day is not null and b.ended_latest is null and b.archived_at is null) f`
  return row ?? { beds: 0, toCall: 0, answered: 0 }
}

/** Beds expected to have failed unseen that no rebed is under way for: the sum of their chances. */
export async function readUnseen(tx: Tx, companyId: string): Promise<number> {
  const [row] = await tx.$queryRaw<
    { unseen: number }[]
  >`select coalesce(sum(f.chance_already_failed), 0)::float8 as unseen from bed_forecast f
    where f.company_id = ${companyId}::uuid and f.due50_day is not null and ${FORECAST_IN_SERVICE} and ${NO_REBED}`
  return row?.unseen ?? 0
}

/** How many rebeds of each size of tank are ahead within a year: the sum of chances, by diameter in inches. */
export const readRebedsBySize = (tx: Tx, companyId: string) => tx.$queryRaw<{ diameterIn: number | null; rebeds: number }[]>`
  select t.diameter_in as "diameterIn", sum(f.chance_already_failed + (1 - f.chance_already_failed) * f.chance_12_months)::float8 as rebeds
  from bed_forecast f join bed b on b.company_id = f.company_id and b.id = f.bed_id join tank t on t.company_id = b.company_id and t.id = b.tank_id
  where f.company_id = ${companyId}::uuid and f.due50_day is not null and b.ended_latest is null and b.archived_at is null group by 1`

type Booked = { month: string; kind: string; hours: number }

/** Hours of visits booked from a day on, by month and kind of job. */
export const readBookedHours = (tx: Tx, companyId: string, from: Date, timeZone: string) => tx.$queryRaw<Booked[]>`
  select to_char(v.starts_at at time zone ${timeZone}, 'YYYY-MM') as month, j.kind,
    (sum(extract(epoch from v.ends_at - v.starts_at)) / 3600)::float8 as hours
  from visit v join job j on j.company_id = v.company_id and j.id = v.job_id
  where v.company_id = ${companyId}::uuid and v.state in ('booked', 'under-way') and v.starts_at >= ${from} group by 1, 2`

/** Hours of visits closed since a day, rebeds left out, by kind of job; and when the first of all visits was closed. */
export async function readOtherWork(tx: Tx, companyId: string, since: string) {
  const kinds = await tx.$queryRaw<{ kind: string; hours: number; first: Date }[]>`
    select j.kind, (sum(extract(epoch from v.ends_at - v.starts_at)) / 3600)::float8 as hours, min(v.starts_at) as first
    from visit v join job j on j.company_id = v.company_id and j.id = v.job_id
    where v.company_id = ${companyId}::uuid and v.state = 'closed' and v.close_out is not null and v.starts_at >= ${dateOf(since)} group by 1`
  return {
    kinds: kinds.filter(({ kind }) => kind !== 'rebed'),
    first: kinds.reduce<Date | null>((first, one) => (first === null || one.first < first ? one.first : first), null),
  }
}
