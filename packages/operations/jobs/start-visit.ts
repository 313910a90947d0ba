import type { StartVisitInput } from '@almanac/contract/visits'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import type { VisitState } from '@almanac/records/visit-state'
import { AppError } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { changeState } from './change-state.ts'
import { lockVisit, lockVisitAt, stepOf } from './lock-job.ts'

type Locked = Awaited<ReturnType<typeof lockVisit>>

const notBooked = (state: string) =>
  new AppError(
    'conflict',
    (locale) => wordsIn(locale, 'refusal')('notBooked', { state: wordsIn(locale, 'jobState')(state as VisitState) }),
    { state },
  )

async function change(tx: Tx, command: Command, { visit, job }: Locked, event: 'start' | 'unstart') {
  await changeState(tx, command, job, { state: stepOf(job, event), stateReason: null })
  const state: VisitState = event === 'start' ? 'under-way' : 'booked'
  const changed = await tx.visit.update({
    where: { companyId_id: { companyId: command.companyId, id: visit.id } },
    data: {
      state,
      startedAt: event === 'start' ? command.at : null,
      runningUntil: event === 'start' ? visit.runningUntil : null,
      version: { increment: 1 },
    },
  })
  await command.audit(event === 'start' ? 'started' : 'start taken back', 'visit', visit.id, { jobId: job.id })
  await command.announce('visit', visit.id, changed.version)
  return { visitId: visit.id, version: changed.version }
}

/** A crew begins: visit and job are under way. Pages of the release before send this; tablets send it by `takeFieldCommand`. */
export async function startVisit(
  scope: Scope & { personId: string },
  input: StartVisitInput,
): Promise<{ visitId: string; version: number }> {
  return runCommand(scope, 'jobs.start-visit', input, async (tx, command) => {
    const locked = await lockVisitAt(tx, scope.companyId, input.visitId, input.version, {})
    if (locked.visit.state !== 'booked') throw notBooked(locked.visit.state)
    return change(tx, command, locked, 'start')
  })
}

/** That a crew began, as a fact: whatever was changed of the visit meanwhile. Nothing is left to do where it is under way or closed already. */
export async function noteStart(tx: Tx, command: Command, visitId: string): Promise<void> {
  const locked = await lockVisit(tx, command.companyId, visitId)
  const { state } = locked.visit
  if (state === 'called-off') throw new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('startedCalledOff'), { state })
  if (state === 'booked') await change(tx, command, locked, 'start')
}

/** That a start was a slip: the visit is booked as before. Nothing is left to do where it is booked. */
export async function noteStartTakenBack(tx: Tx, command: Command, visitId: string): Promise<void> {
  const locked = await lockVisit(tx, command.companyId, visitId)
  const { state } = locked.visit
  if (state === 'under-way') await change(tx, command, locked, 'unstart')
  else if (state !== 'booked') throw notBooked(state)
}
