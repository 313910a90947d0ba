import type { ResumeJob } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { changeState } from './change-state.ts'
import { lockJobAt, stepOf } from './lock-job.ts'

/** Brings back a job that was held or called off: it needs a place again. A second open rebed of one bed is refused by the database. */
export async function resumeJob(scope: Scope & { personId: string }, input: ResumeJob) {
  return runCommand(scope, 'jobs.resume-job', input, async (tx, command) => {
    const job = await lockJobAt(tx, scope.companyId, input.jobId, input.version, { state: 'proposed' })
    const state = stepOf(job, job.state === 'called-off' ? 'revive' : 'release')
    return changeState(tx, command, job, { state, stateReason: null })
  })
}
