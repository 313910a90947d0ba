import type { MoveVisit } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { drivesOfPlace } from './drives-of-place.ts'
import { lapseOffers } from './end-offer.ts'
import { lockVisitAt, stepOf } from './lock-job.ts'
import { claimSlot, lockSlot, releasePlace } from './lock-slot.ts'
import { lockSheet, placeWanted } from './place-on-sheet.ts'
import { settlePromise } from './promises.ts'

/**
 * Moves a booked visit to another time, crew or day, with the same checks as booking. Either all of it moves or nothing: on a 409 the
 * visit stands where it was.
 */
export async function moveVisit(scope: Scope & { personId: string }, input: MoveVisit) {
  const { visitId, version, at, confirmed } = input
  const drives = await drivesOfPlace(scope, { crewDayId: input.crewDayId, at, visitId })
  return runCommand(scope, 'jobs.move-visit', input, async (tx, command) => {
    const { companyId } = scope
    const { visit, job } = await lockVisitAt(tx, companyId, visitId, version, { crewDayId: input.crewDayId, at })
    if (visit.state !== 'booked')
      throw new AppError('conflict', 'Only a visit that hasn’t started can be moved. Nothing was changed; look at the sheet again.')
    stepOf(job, 'move')
    const crewDayId = input.crewDayId ?? visit.crewDayId
    const sheet = await lockSheet(tx, companyId, crewDayId, visit.crewDayId)
    const place = await placeWanted(tx, companyId, { job, sheet, at, confirmed, drives, now: command.at, visit })
    await lapseOffers(tx, command)
    await releasePlace(tx, companyId, visitId)
    await lockSlot(tx, place)
    const { startsAt, endsAt } = place
    await claimSlot(tx, place, visitId)
    const changed = await tx.visit.update({
      where: { companyId_id: { companyId, id: visitId } },
      data: { crewDayId, startsAt, endsAt, version: { increment: 1 } },
    })
    await settlePromise(tx, command, visit, startsAt)
    const from = { crewDayId: visit.crewDayId, startsAt: visit.startsAt.toISOString() }
    await command.audit('moved', 'visit', visitId, { from, to: { crewDayId, startsAt: startsAt.toISOString() }, confirmed })
    await command.announce('visit', visitId, changed.version)
    return {
      visitId,
      version: changed.version,
      jobId: job.id,
      jobVersion: job.version,
      startsAt: startsAt.toISOString(),
      endsAt: endsAt.toISOString(),
    }
  })
}
