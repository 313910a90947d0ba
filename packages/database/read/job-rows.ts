import type { JobKind } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { BED_FACTS, bedFacts } from './bed-facts.ts'

/** What every listing of jobs reads beside the job itself. */
export const JOB_PARTS = {
  site: { select: { label: true, town: true } },
  bed: { include: { ...BED_FACTS, forecast: { select: { chance3Months: true } } } },
} satisfies Prisma.JobInclude

/** When a site takes visits. */
export const SITE_HOURS = { visitWeekdays: true, visitFrom: true, visitUntil: true } satisfies Prisma.SiteSelect

export const siteHours = (site: { visitWeekdays: number[]; visitFrom: string | null; visitUntil: string | null }) => ({
  ...{ weekdays: site.visitWeekdays, from: site.visitFrom, until: site.visitUntil },
})

/** The valves of a job's softener, to know who may work on them. */
export const JOB_VALVES = {
  select: { valves: { where: { archivedAt: null }, select: { cardId: true, tankId: true }, orderBy: { id: 'asc' } } },
} satisfies Prisma.SoftenerDefaultArgs

type ValveRows = { valves: { cardId: string | null; tankId: string | null }[] } | null

/** Cards of the valves a job works on: the tank's own and those of the whole softener. */
export function valveCardIds(softener: ValveRows, tankId: string | null): string[] {
  const mine = (softener?.valves ?? []).filter((valve) => tankId === null || valve.tankId === null || valve.tankId === tankId)
  return [...new Set(mine.flatMap((valve) => valve.cardId ?? []))]
}

type JobWithParts = Prisma.JobGetPayload<{ include: typeof JOB_PARTS }>

/** A job as every screen shows it. The words of kind and state are held by the table's own checks. */
export function jobFacts(job: JobWithParts) {
  return {
    id: job.id,
    version: job.version,
    kind: job.kind as JobKind,
    state: job.state as JobState,
    siteId: job.siteId,
    siteLabel: job.site.label,
    town: job.site.town,
    bed: job.bed ? bedFacts(job.bed) : null,
    dueEarliest: dayOf(job.dueEarliest),
    dueLatest: dayOf(job.dueLatest),
    minutes: job.minutes,
    crewSize: job.crewSize,
    needsVehicle: job.needsVehicle,
  }
}
