import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { JobState } from '@almanac/records/job-state'
import { AppError, notFound } from '@almanac/runtime/errors'
import { type JobEvent, nextJobState } from '@almanac/service-rules/jobs/job-states'

/**
 * Locks a job until the transaction ends, and reads it. Every use case takes its locks in the same order (job, visit, day sheet, people,
 * vehicle), so that two of them wait for each other but never in a circle.
 */
export async function lockJob(tx: Tx, companyId: string, jobId: string) {
  await lockRows(tx, companyId, 'job', [jobId])
  const job = await tx.job.findUnique({
    where: { companyId_id: { companyId, id: jobId } },
    include: { site: { select: { label: true } } },
  })
  if (!job) throw notFound('job')
  return job
}

export type LockedJob = Awaited<ReturnType<typeof lockJob>>

/** As `lockJob`, and refuses when the job is no longer as the screen saw it. */
export async function lockJobAt(tx: Tx, companyId: string, jobId: string, seenVersion: number, sent: Record<string, unknown>) {
  const job = await lockJob(tx, companyId, jobId)
  const { id, version, state, kind, stateReason, minutes, crewSize, needsVehicle, notes } = job
  await expectChanged(version === seenVersion ? 1 : 0, 'job', seenVersion, sent, async () => ({
    ...{ id, version, state, kind, stateReason, minutes, crewSize, needsVehicle, notes },
    ...{ dueEarliest: dayOf(job.dueEarliest), dueLatest: dayOf(job.dueLatest) },
  }))
  return job
}

/** The visit with its job, both locked. */
export async function lockVisit(tx: Tx, companyId: string, visitId: string) {
  const where = { companyId_id: { companyId, id: visitId } }
  const named = await tx.visit.findUnique({ where, select: { jobId: true } })
  if (!named) throw notFound('visit')
  const job = await lockJob(tx, companyId, named.jobId)
  await lockRows(tx, companyId, 'visit', [visitId])
  return { visit: await tx.visit.findUniqueOrThrow({ where }), job }
}

/** As `lockVisit`, and refuses when the visit is no longer as the screen saw it. */
export async function lockVisitAt(tx: Tx, companyId: string, visitId: string, seenVersion: number, sent: Record<string, unknown>) {
  const { visit, job } = await lockVisit(tx, companyId, visitId)
  const { id, version, state, startsAt, endsAt, crewDayId } = visit
  await expectChanged(version === seenVersion ? 1 : 0, 'visit', seenVersion, sent, async () => ({
    id,
    version,
    state,
    startsAt: startsAt.toISOString(),
    endsAt: endsAt.toISOString(),
    crewDayId,
  }))
  return { visit, job }
}

/** The state a job goes to, or a refusal in the words of the state table. */
export function stepOf(job: { state: string }, event: JobEvent): JobState {
  const step = nextJobState(job.state as JobState, event)
  if (!step.ok) throw new AppError('conflict', `${step.reason} Nothing was changed.`, { state: job.state, event })
  return step.state
}
