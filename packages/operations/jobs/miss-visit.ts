import type { MissVisit } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { oweCall } from '../shared/call-backs.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { changeState } from './change-state.ts'
import { lockVisitAt, stepOf } from './lock-job.ts'
import { takeOffSheet } from './take-off-sheet.ts'

/**
 * Nobody came to a visit whose time has passed: it comes off its sheet with that said in its notes, its job waits for a place again, and its customer goes on
 * the list of whom to call, today.
 */
export async function missVisit(scope: Scope & { personId: string }, input: MissVisit) {
  return runCommand(scope, 'jobs.miss-visit', input, async (tx, command) => {
    const { companyId } = scope
    const { visit, job } = await lockVisitAt(tx, companyId, input.visitId, input.version, { state: 'called-off' })
    if (visit.state !== 'booked')
      throw new AppError('conflict', 'Only a visit that nobody started can be one we missed. Nothing was changed; look at the job again.')
    if (visit.startsAt > command.at)
      throw new AppError('conflict', 'This visit’s time hasn’t come yet. Nothing was changed; move it, or take it off the sheet.')
    const { timeZone } = await companyFacts(tx, companyId)
    const notes = [visit.notes, 'We did not come.'].filter(Boolean).join('\n')
    await tx.visit.update({ where: { companyId_id: { companyId, id: visit.id } }, data: { notes } })
    // One call for both: what was missed and what was promised.
    const version = await takeOffSheet(tx, command, visit.id, true)
    const owed = { dueDay: dayIn(timeZone, command.at), siteId: job.siteId, jobId: job.id, visitId: visit.id }
    const callBackId = await oweCall(tx, command, { cause: 'missed', ...owed })
    await command.audit('missed', 'visit', visit.id, { jobId: job.id, callBackId })
    const after = await changeState(tx, command, job, { state: stepOf(job, 'unbook'), stateReason: null })
    return { visitId: visit.id, version, jobId: job.id, jobVersion: after.version, state: after.state }
  })
}
