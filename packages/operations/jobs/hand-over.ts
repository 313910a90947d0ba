import type { HandOver, TakeBack } from '@almanac/contract/materials'
import { expectChanged } from '@almanac/database/changed-row'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { formatAmount } from '@almanac/units/amount-words'
import { companyFacts } from '../shared/company-facts.ts'
import { giveMaterials } from '../shared/give-materials.ts'
import { moveStock } from '../shared/move-stock.ts'
import { noteTurnDone } from '../shared/note-turn-done.ts'
import { changeState } from './change-state.ts'
import { lockJob, stepOf } from './lock-job.ts'
import { type JobNow, jobNow, lockDelivery } from './set-material.ts'

type Caller = Scope & { personId: string }

/** What was set aside is the customer's, collected or shipped: it leaves the stores, and the job is closed. */
export async function handOver(scope: Caller, input: HandOver): Promise<JobNow> {
  return runCommand(scope, 'jobs.hand-over', input, async (tx, command) => {
    const { companyId } = scope
    const { jobId, way } = input
    const job = await lockDelivery(tx, companyId, input, { way })
    const state = stepOf(job, 'hand-over')
    const given = await giveMaterials(tx, command, { jobId, way, visitId: null })
    if (given === 0)
      throw new AppError('conflict', 'Nothing is set aside for this job, so nothing was handed over. Add its materials first.')
    const { version } = await changeState(tx, command, job, { state, stateReason: null })
    const { today } = await companyFacts(tx, companyId)
    await tx.job.update({ where: { companyId_id: { companyId, id: jobId } }, data: { closedDay: dateOf(today) } })
    await noteTurnDone(tx, command, jobId, today)
    await command.audit('materials given', 'job', jobId, { way, lines: given })
    return { jobId, jobVersion: version }
  })
}

/** Some of what a customer had came back: onto the shelf again. */
export async function takeBack(scope: Caller, input: TakeBack): Promise<{ lineId: string; version: number }> {
  return runCommand(scope, 'jobs.take-back-material', input, async (tx, command) => {
    const { companyId } = scope
    const { lineId, version, quantity } = input
    const named = await tx.materialLine.findUnique({ where: { companyId_id: { companyId, id: lineId } }, select: { jobId: true } })
    if (!named) throw notFound('material')
    await lockJob(tx, companyId, named.jobId)
    const line = await tx.materialLine.findUniqueOrThrow({
      where: { companyId_id: { companyId, id: lineId } },
      include: { stockItem: true },
    })
    await expectChanged(line.version === version ? 1 : 0, 'material', version, { quantity }, async () => ({
      returned: line.returned,
      version: line.version,
    }))
    if (line.state !== 'handed-over')
      throw new AppError('conflict', 'The customer doesn’t have this, so it can’t come back. Nothing was saved.')
    const left = line.quantity - line.returned
    if (quantity > left + 1e-9) {
      const display = await companyFacts(tx, companyId)
      const had = formatAmount(left, line.stockItem.unit, display)
      throw new AppError('invalid', `The customer has ${had} of this, and more can’t come back. Nothing was saved.`, { field: 'quantity' })
    }
    const returned = Math.min(line.quantity, line.returned + quantity)
    await tx.materialLine.update({
      where: { companyId_id: { companyId, id: lineId } },
      data: { returned, state: returned === line.quantity ? 'returned' : 'handed-over', version: { increment: 1 } },
    })
    await moveStock(tx, command, [{ stockItemId: line.stockItemId, quantity, reason: 'returned', jobId: line.jobId }])
    await command.audit('material taken back', 'job', line.jobId, { stockItemId: line.stockItemId, quantity })
    await jobNow(tx, command, line.jobId)
    return { lineId, version: version + 1 }
  })
}
