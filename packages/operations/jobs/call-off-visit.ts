import type { CallOffVisit } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { changeState } from './change-state.ts'
import { lockVisitAt, stepOf } from './lock-job.ts'
import { refuseLostPromise } from './place-on-sheet.ts'
import { takeOffSheet } from './take-off-sheet.ts'

/** Takes a booked visit off its sheet. The job needs a place again. One that was promised has to be confirmed, and its customer goes on the list of whom to call. */
export async function callOffVisit(scope: Scope & { personId: string }, input: CallOffVisit) {
  return runCommand(scope, 'jobs.call-off-visit', input, async (tx, command) => {
    const { visit, job } = await lockVisitAt(tx, scope.companyId, input.visitId, input.version, { state: 'called-off' })
    if (visit.state !== 'booked')
      throw new AppError(
        'conflict',
        'Only a visit that hasn’t started can come off the sheet. Nothing was changed; look at the sheet again.',
      )
    if (visit.promisedBy) await refuseLostPromise(tx, scope.companyId, visit, input.confirmed ?? [])
    const version = await takeOffSheet(tx, command, visit.id)
    const after = await changeState(tx, command, job, { state: stepOf(job, 'unbook'), stateReason: null })
    return { visitId: visit.id, version, jobId: job.id, jobVersion: after.version, state: after.state }
  })
}
