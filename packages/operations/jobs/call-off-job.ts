import type { HoldJob } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { releaseMaterials } from '../shared/give-materials.ts'
import { changeState } from './change-state.ts'
import { withdrawOffersOf } from './end-offer.ts'
import { lockJobAt, stepOf } from './lock-job.ts'
import { takeJobOffSheet } from './take-off-sheet.ts'

/** Ends a job undone, with a reason. A booked visit comes off its day sheet in the same breath. */
export async function callOffJob(scope: Scope & { personId: string }, input: HoldJob) {
  return runCommand(scope, 'jobs.call-off-job', input, async (tx, command) => {
    const job = await lockJobAt(tx, scope.companyId, input.jobId, input.version, { state: 'called-off', stateReason: input.reason })
    const state = stepOf(job, 'call-off')
    await takeJobOffSheet(tx, command, job.id, input.told ?? false)
    await withdrawOffersOf(tx, command, job.id)
    await releaseMaterials(tx, command, job.id, 'called-off')
    return changeState(tx, command, job, { state, stateReason: input.reason })
  })
}
