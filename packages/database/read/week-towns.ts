import type { JobKind } from '@almanac/records/job-kind'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { addDays } from '@almanac/units/calendar/calendar-day'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { FORECAST_IN_SERVICE } from './in-service.ts'

/** A bed that is likelier than not to be due within so many days counts as work that a gap may take. */
const DUE_WITHIN_DAYS = 91
const MOST_WAITING = 12

type TownRow = { town: string; waiting: number; due: number; latitude: number | null; longitude: number | null; postcode: string | null }

/**
 * The company's towns, however they are spelt, with what waits in them: jobs without a visit and without held times, and beds that come due soon and have no rebed open. A town
 * stands at the middle of its sites' coordinates; where none has any, one of its postcodes. `spellings` says how most of its sites spell each, and folds them here: see month-chances.
 */
export async function readTowns(tx: Tx, companyId: string, today: string, spellings: ReadonlyMap<string, string>): Promise<TownRow[]> {
  const rows = await tx.$queryRaw<(TownRow & { placed: number })[]>`
    select s.town, sum(s.latitude) as latitude, sum(s.longitude) as longitude, count(s.latitude)::int as placed, min(s.postcode) as postcode,
      coalesce(sum(w.jobs), 0)::int as waiting, coalesce(sum(d.beds), 0)::int as due
    from site s
    left join (select j.site_id, count(*) as jobs from job j where j.company_id = ${companyId}::uuid and j.state = 'proposed'
      and not exists (select from visit v where v.company_id = j.company_id and v.job_id = j.id and v.state = 'offered') group by 1) w on w.site_id = s.id
    left join (select f.site_id, count(*) as beds from bed_forecast f
      where f.company_id = ${companyId}::uuid and f.due50_day <= ${addDays(today, DUE_WITHIN_DAYS)}::date and ${FORECAST_IN_SERVICE}
        and not exists (select from job j where j.company_id = f.company_id and j.bed_id = f.bed_id and j.kind = any(${[...bedRenewingKinds]})
          and j.state in ('proposed', 'booked', 'under-way', 'held'))
      group by 1) d on d.site_id = s.id
    where s.company_id = ${companyId}::uuid and s.archived_at is null and s.town is not null
    group by s.town`
  return [...Map.groupBy(rows, (row) => spellings.get(row.town) ?? row.town)].map(([town, spelt]) => {
    const sum = (of: (row: (typeof rows)[number]) => number | null) => spelt.reduce((all, row) => all + (of(row) ?? 0), 0)
    const placed = sum((row) => row.placed)
    return {
      town,
      waiting: sum((row) => row.waiting),
      due: sum((row) => row.due),
      latitude: placed ? sum((row) => row.latitude) / placed : null,
      longitude: placed ? sum((row) => row.longitude) / placed : null,
      postcode: spelt.flatMap((row) => row.postcode ?? []).sort()[0] ?? null,
    }
  })
}

const WAITING = {
  ...{ id: true, version: true, kind: true, dueLatest: true, minutes: true, crewSize: true },
  site: { select: { label: true, town: true } },
} satisfies Prisma.JobSelect

/** Without a visit, and without held times. */
const WAITS = { state: 'proposed', visits: { none: { state: 'offered' } } } satisfies Prisma.JobWhereInput

const waitingJob = (job: Prisma.JobGetPayload<{ select: typeof WAITING }>) => ({
  jobId: job.id,
  version: job.version,
  kind: job.kind as JobKind,
  siteLabel: job.site.label,
  town: job.site.town,
  dueLatest: dayOf(job.dueLatest),
  minutes: job.minutes,
  people: job.crewSize,
})

/** Jobs that wait in a town, by all of its spellings, the most pressing first. */
export async function readWaitingIn(tx: Tx, companyId: string, spellings: string[]) {
  const found = await tx.job.findMany({
    where: { ...WAITS, companyId, site: { town: { in: spellings } } },
    select: WAITING,
    orderBy: [{ dueLatest: { sort: 'asc', nulls: 'last' } }, { id: 'asc' }],
    take: MOST_WAITING,
  })
  return found.map(waitingJob)
}

/** One job, if it waits; null where it has its visit by now, or is none of the company's. */
export async function readWaitingJob(tx: Tx, companyId: string, jobId: string) {
  const job = await tx.job.findFirst({ where: { ...WAITS, companyId, id: jobId }, select: WAITING })
  return job && waitingJob(job)
}
