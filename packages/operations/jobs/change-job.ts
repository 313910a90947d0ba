import type { ChangeJob } from '@almanac/contract/jobs'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import type { JobState } from '@almanac/records/job-state'
import { AppError } from '@almanac/runtime/errors'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { companyFacts } from '../shared/company-facts.ts'
import { drivesOfPlace, type Unusually } from './drives-of-place.ts'
import { type LockedJob, lockJobAt } from './lock-job.ts'
import { claimSlot, lockSlot, releasePlace } from './lock-slot.ts'
import { lockSheet, placeWanted } from './place-on-sheet.ts'
import { refreshReminders } from './refresh-reminders.ts'

const OPEN = ['proposed', 'booked', 'held']

/** The job's booked visit, which a new length stretches or shortens. */
const bookedVisit = (tx: Tx, companyId: string, jobId: string) =>
  tx.visit.findFirst({ where: { companyId, jobId, state: 'booked' }, orderBy: { id: 'asc' } })

/** Gives the booked visit its new length from where it begins, with the same checks as booking; what was there before the change asks nothing again. */
async function stretch(tx: Tx, command: Command, job: LockedJob, input: ChangeJob, drives: readonly Unusually[]): Promise<void> {
  const { companyId } = command
  const visit = await bookedVisit(tx, companyId, job.id)
  if (!visit) return
  const { timeZone } = await companyFacts(tx, companyId)
  const sheet = await lockSheet(tx, companyId, visit.crewDayId)
  const wanted = { ...job, minutes: input.minutes, crewSize: input.crewSize, needsVehicle: input.needsVehicle }
  const confirmed = [...input.confirmed, 'past', 'crew', 'parts', 'order', 'load', 'promise'] as const
  const at = clockIn(timeZone, visit.startsAt)
  const place = await placeWanted(tx, companyId, { job: wanted, sheet, at, confirmed, now: command.at, drives, visit })
  await releasePlace(tx, companyId, visit.id)
  await lockSlot(tx, place)
  await claimSlot(tx, place, visit.id)
  const changed = await tx.visit.update({
    where: { companyId_id: { companyId, id: visit.id } },
    data: { endsAt: place.endsAt, version: { increment: 1 } },
  })
  await command.announce('visit', visit.id, changed.version)
}

/**
 * Changes what a job asks for: its length, people, vehicle, days and note. A booked visit keeps its beginning and takes the new length: 409 where its crew is
 * too small or busy by then, or `confirmed` lacks what is unusual about it; then nothing has changed.
 */
export async function changeJob(scope: Scope & { personId: string }, input: ChangeJob) {
  const { jobId, version, minutes, crewSize, needsVehicle, dueEarliest, dueLatest, notes } = input
  const visit = await inCompany(scope, (tx) => bookedVisit(tx, scope.companyId, jobId))
  const { timeZone } = await inCompany(scope, (tx) => companyFacts(tx, scope.companyId))
  const drives = visit ? await drivesOfPlace(scope, { at: clockIn(timeZone, visit.startsAt), visitId: visit.id, minutes }) : []
  return runCommand(scope, 'jobs.change-job', input, async (tx, command) => {
    const { companyId } = scope
    const sent = { minutes, crewSize, needsVehicle, dueEarliest, dueLatest, notes }
    const job = await lockJobAt(tx, companyId, jobId, version, sent)
    if (!OPEN.includes(job.state))
      throw new AppError('conflict', 'Only a job that hasn’t started can be changed. Nothing was changed; look at the job again.')
    if (dueEarliest && dueLatest && dueEarliest > dueLatest) {
      const display = await companyFacts(tx, companyId)
      throw new AppError(
        'invalid',
        `The job can’t be due from ${formatDay(dueEarliest, display)} and by ${formatDay(dueLatest, display)}. Nothing was changed; swap the days.`,
      )
    }
    const asksMore = minutes !== job.minutes || crewSize !== job.crewSize || needsVehicle !== job.needsVehicle
    if (asksMore) await stretch(tx, command, job, input, minutes > job.minutes ? drives : [])
    const changed = await tx.job.update({
      where: { companyId_id: { companyId, id: jobId } },
      data: {
        ...{ minutes, crewSize, needsVehicle, notes: notes || null, version: { increment: 1 } },
        ...{ dueEarliest: dateOf(dueEarliest), dueLatest: dateOf(dueLatest) },
      },
    })
    // The note may name a person, so it stays out of the trail.
    await command.audit('changed', 'job', jobId, { minutes, crewSize, needsVehicle, dueEarliest, dueLatest })
    await command.announce('job', jobId, changed.version)
    await refreshReminders(command, job)
    return { jobId, version: changed.version, state: changed.state as JobState }
  })
}
