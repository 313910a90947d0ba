import type { SettleTurn } from '@almanac/contract/agreements'
import { expectChanged } from '@almanac/database/changed-row'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { JobState } from '@almanac/records/job-state'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { standingOf } from '@almanac/service-rules/agreements/agreement-turns'
import { companyFacts } from '../shared/company-facts.ts'
import { hasTurnOn } from './turn-due.ts'

const invalid = (message: string, field: string) => new AppError('invalid', `${message} Nothing was saved.`, { field })

/** Says that a turn was done without a job of ours, or is skipped and why; or takes that back. One whose job is open is done by that. */
export async function settleTurn(scope: Scope & { personId: string }, input: SettleTurn) {
  return runCommand(scope, 'agreements.settle-turn', input, async (tx, command) => {
    const { companyId } = scope
    const { agreementId, dueDay, version, outcome, doneDay, reason } = input
    await lockRows(tx, companyId, 'agreement', [agreementId])
    const agreement = await tx.agreement.findFirst({
      where: { companyId, id: agreementId, archivedAt: null },
      include: {
        terms: { orderBy: { fromDay: 'desc' }, take: 1 },
        turns: { where: { dueDay: dateOf(dueDay) }, include: { job: { select: { state: true } } } },
      },
    })
    if (!agreement) throw notFound('agreement')
    const [turn] = agreement.turns
    if (!turn && !hasTurnOn(agreement, dueDay)) throw notFound('turn')
    const seen = turn?.version ?? 0
    await expectChanged(seen === version ? 1 : 0, 'turn', version, { outcome }, async () => ({ version: seen }))
    const jobState = (turn?.job?.state ?? null) as JobState | null
    const standing = standingOf(turn && { dueDay, state: turn.state as 'proposed' | 'done' | 'skipped', jobState })
    if (standing === 'under-way') throw new AppError('conflict', 'Its job is still open. Nothing was saved; close it or call it off first.')
    if (standing === 'done' && jobState === 'closed') throw new AppError('conflict', 'A visit did this. Nothing was changed.')
    if (outcome === 'skipped' && !reason) throw invalid('Say why it is skipped.', 'reason')
    if (outcome === 'done' && !doneDay) throw invalid('Choose the day it was done.', 'doneDay')
    const { today } = await companyFacts(tx, companyId)
    if (outcome === 'done' && doneDay && doneDay > today)
      throw invalid('It can’t be done in the future; choose today or earlier.', 'doneDay')
    const data = {
      ...{ state: outcome === 'open' ? 'proposed' : outcome, jobId: null },
      ...{ doneDay: outcome === 'done' ? dateOf(doneDay) : null, reason: outcome === 'open' ? null : reason || null },
    }
    if (turn)
      await tx.agreementTurn.update({ where: { companyId_id: { companyId, id: turn.id } }, data: { ...data, version: { increment: 1 } } })
    else await tx.agreementTurn.create({ data: { companyId, id: newId(), agreementId, dueDay: dateOf(dueDay), ...data } })
    await command.audit(outcome === 'open' ? 'turn reopened' : `turn ${outcome}`, 'agreement', agreementId, { dueDay })
    await command.announce('agreement', agreementId)
    return { agreementId, dueDay, version: seen + 1 }
  })
}
