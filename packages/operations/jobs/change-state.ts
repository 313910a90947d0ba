import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import type { JobState } from '@almanac/records/job-state'
import type { LockedJob } from './lock-job.ts'
import { refreshReminders } from './refresh-reminders.ts'

/** Writes a locked job's new state with its trail. The reason may name a person, so it stays out of the audit. */
export async function changeState(tx: Tx, command: Command, job: LockedJob, to: { state: JobState; stateReason: string | null }) {
  const changed = await tx.job.update({
    where: { companyId_id: { companyId: command.companyId, id: job.id } },
    data: { ...to, version: { increment: 1 } },
  })
  await command.audit(to.state, 'job', job.id, { from: job.state, to: to.state })
  await command.announce('job', job.id, changed.version)
  await refreshReminders(command, job)
  return { jobId: job.id, version: changed.version, state: to.state }
}
