import type { StartVisitInput } from '@almanac/contract/visits'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import type { VisitState } from '@almanac/records/visit-state'
import { AppError } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { changeState } from './change-state.ts'
import { lockVisitAt, stepOf } from './lock-job.ts'

/** A crew begins: visit and job are under way. */
export async function startVisit(
  scope: Scope & { personId: string },
  input: StartVisitInput,
): Promise<{ visitId: string; version: number }> {
  return runCommand(scope, 'jobs.start-visit', input, async (tx, command) => {
    const { companyId } = scope
    const { visit, job } = await lockVisitAt(tx, companyId, input.visitId, input.version, {})
    if (visit.state !== 'booked')
      throw new AppError(
        'conflict',
        (locale) => wordsIn(locale, 'refusal')('notBooked', { state: wordsIn(locale, 'jobState')(visit.state as VisitState) }),
        { state: visit.state },
      )
    await changeState(tx, command, job, { state: stepOf(job, 'start'), stateReason: null })
    const changed = await tx.visit.update({
      where: { companyId_id: { companyId, id: visit.id } },
      data: { state: 'under-way', version: { increment: 1 } },
    })
    await command.audit('started', 'visit', visit.id, { jobId: job.id })
    await command.announce('visit', visit.id, changed.version)
    return { visitId: visit.id, version: changed.version }
  })
}
