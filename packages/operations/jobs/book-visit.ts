import type { BookVisit } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { reserveKit } from '../shared/reserve-kit.ts'
import { drivesOfPlace } from './drives-of-place.ts'
import { lapseOffers, withdrawOffersOf } from './end-offer.ts'
import { lockJobAt, stepOf } from './lock-job.ts'
import { claimSlot, lockSlot } from './lock-slot.ts'
import { lockSheet, placeWanted } from './place-on-sheet.ts'
import { promisedTimes, promiseNow, takeOverPromise } from './promises.ts'
import { refreshReminders } from './refresh-reminders.ts'

/**
 * Puts a job on a crew's day sheet at a clock time, for the people and the vehicle of the sheet. 404 for a job or sheet that is not there;
 * 409 when the job changed meanwhile or may not be booked, when the crew cannot do it, when someone is busy, or when `confirmed` lacks
 * what is unusual. Of attempts at the same moment one succeeds.
 */
export async function bookVisit(scope: Scope & { personId: string }, input: BookVisit) {
  const { jobId, jobVersion, crewDayId, at, confirmed } = input
  const drives = await drivesOfPlace(scope, { crewDayId, at, jobId })
  return runCommand(scope, 'jobs.book-visit', input, async (tx, command) => {
    const { companyId } = scope
    const job = await lockJobAt(tx, companyId, jobId, jobVersion, { crewDayId, at })
    const state = stepOf(job, 'book')
    const sheet = await lockSheet(tx, companyId, crewDayId)
    const place = await placeWanted(tx, companyId, { job, sheet, at, confirmed, drives, now: command.at })
    await lapseOffers(tx, command)
    await withdrawOffersOf(tx, command, jobId)
    await lockSlot(tx, place)
    const { startsAt, endsAt } = place
    const visitId = newId()
    const promise = input.promise
      ? await promiseNow(tx, command, jobId, promisedTimes(startsAt, input.promise, place.display))
      : await takeOverPromise(tx, command, jobId, startsAt)
    await tx.visit.create({ data: { companyId, id: visitId, jobId, crewDayId, startsAt, endsAt, state: 'booked', ...promise } })
    await claimSlot(tx, place, visitId)
    await reserveKit(tx, command, visitId, job)
    const changed = await tx.job.update({
      where: { companyId_id: { companyId, id: jobId } },
      data: { state, stateReason: null, version: { increment: 1 } },
    })
    await command.audit('booked', 'visit', visitId, { jobId, crewDayId, startsAt: startsAt.toISOString(), confirmed })
    await command.announce('visit', visitId, 1)
    await command.announce('job', jobId, changed.version)
    await refreshReminders(command, job)
    return {
      visitId,
      version: 1,
      jobId,
      jobVersion: changed.version,
      startsAt: startsAt.toISOString(),
      endsAt: endsAt.toISOString(),
    }
  })
}
