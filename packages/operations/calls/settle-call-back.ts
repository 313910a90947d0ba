import type { SettleCallBack } from '@almanac/contract/calls'
import { expectChanged } from '@almanac/database/changed-row'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError, notFound } from '@almanac/runtime/errors'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { companyFacts } from '../shared/company-facts.ts'

/** Notes what came of calling: talked, and it is done; nobody answered, and it is due again tomorrow. 409 where a colleague was quicker. */
export async function settleCallBack(scope: Scope & { personId: string }, input: SettleCallBack) {
  return runCommand(scope, 'calls.settle-call-back', input, async (tx, command) => {
    const { companyId } = scope
    const { callBackId: id, version, outcome } = input
    await lockRows(tx, companyId, 'call_back', [id])
    const found = await tx.callBack.findUnique({ where: { companyId_id: { companyId, id } } })
    if (!found) throw notFound('call-back')
    await expectChanged(found.version === version ? 1 : 0, 'call-back', version, { outcome }, async () => ({
      ...{ id, version: found.version, state: found.state },
    }))
    if (found.state !== 'open') throw new AppError('conflict', 'Somebody called already. Nothing was changed.')
    const { today } = await companyFacts(tx, companyId)
    const note = [found.note, input.note].filter(Boolean).join('\n') || null
    const dueDay = outcome === 'talked' ? found.dueDay : (dateOf(addDays(today, 1)) as Date)
    const closed = outcome === 'talked' ? { state: 'done', closedAt: command.at, closedBy: scope.personId } : {}
    const after = await tx.callBack.update({
      where: { companyId_id: { companyId, id } },
      data: { ...closed, outcome, note, dueDay, version: { increment: 1 } },
    })
    await command.audit(outcome, 'call-back', id)
    await command.announce('call-back', id, after.version)
    return {
      callBackId: id,
      version: after.version,
      state: after.state as 'open' | 'done',
      dueDay: after.dueDay.toISOString().slice(0, 10),
    }
  })
}
