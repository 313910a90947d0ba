import type { JobKind } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { VisitState } from '@almanac/records/visit-state'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

/** Visits to a site, closed and to come, and jobs that were closed or called off without one. */
export async function visitHappenings(tx: Tx, companyId: string, siteId: string, most: number) {
  const visits = await tx.visit.findMany({
    where: { companyId, job: { siteId }, state: { notIn: ['called-off', 'offered'] } },
    include: { job: { select: { id: true, kind: true } }, crewDay: { select: { day: true, name: true } } },
    orderBy: { startsAt: 'desc' },
    take: most,
  })
  const jobs = await tx.job.findMany({
    where: {
      companyId,
      siteId,
      state: { in: ['closed', 'called-off'] },
      closedDay: { not: null },
      visits: { none: { state: { notIn: ['called-off', 'offered'] } } },
    },
    orderBy: { closedDay: 'desc' },
    take: most,
  })
  return [
    ...visits.map((visit) => ({
      type: 'visit' as const,
      key: visit.id,
      day: dayOf(visit.crewDay.day),
      jobId: visit.job.id,
      kind: visit.job.kind as JobKind,
      state: visit.state as VisitState,
      outcome: visit.outcome as VisitOutcome | null,
      crew: visit.crewDay.name,
      notes: visit.notes,
    })),
    ...jobs.flatMap((job) =>
      job.closedDay
        ? [
            {
              type: 'job' as const,
              key: job.id,
              day: dayOf(job.closedDay),
              jobId: job.id,
              kind: job.kind as JobKind,
              state: job.state as JobState,
              reason: job.stateReason,
            },
          ]
        : [],
    ),
  ]
}
