import type { HoldJob } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { changeState } from './change-state.ts'
import { withdrawOffersOf } from './end-offer.ts'
import { lockJobAt, stepOf } from './lock-job.ts'
import { takeJobOffSheet } from './take-off-sheet.ts'

/** Lets a job wait for something, with a reason. A booked visit comes off its day sheet in the same breath. */
export async function holdJob(scope: Scope & { personId: string }, input: HoldJob) {
  return runCommand(scope, 'jobs.hold-job', input, async (tx, command) => {
    const job = await lockJobAt(tx, scope.companyId, input.jobId, input.version, { state: 'held', stateReason: input.reason })
    const state = stepOf(job, 'hold')
    await takeJobOffSheet(tx, command, job.id, input.told ?? false)
    await withdrawOffersOf(tx, command, job.id)
    return changeState(tx, command, job, { state, stateReason: input.reason })
  })
}
