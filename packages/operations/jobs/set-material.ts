import type { SetMaterial } from '@almanac/contract/materials'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { isOpenJob, type JobState } from '@almanac/records/job-state'
import { openMaterialStates } from '@almanac/records/stock'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { stockRule } from '@almanac/units/amount-kinds'
import { checkAmounts } from '../shared/check-amounts.ts'
import { lockJobAt } from './lock-job.ts'

export type JobNow = { jobId: string; jobVersion: number }

/** The delivery whose materials these are, locked, as the screen saw it. */
export async function lockDelivery(tx: Tx, companyId: string, { jobId, jobVersion }: JobNow, sent: Record<string, unknown>) {
  const job = await lockJobAt(tx, companyId, jobId, jobVersion, sent)
  if (job.kind !== 'delivery')
    throw new AppError('conflict', 'Materials go with a delivery. Nothing was saved; what a visit uses is written at its close-out.')
  return job
}

/** The job with one more version, and told to everybody who shows it. */
export async function jobNow(tx: Tx, command: Command, jobId: string): Promise<JobNow> {
  const { version } = await tx.job.update({
    where: { companyId_id: { companyId: command.companyId, id: jobId } },
    data: { version: { increment: 1 } },
  })
  await command.announce('job', jobId, version)
  await command.announce('kit', jobId)
  return { jobId, jobVersion: version }
}

/** Sets some of an item aside for a delivery. An empty shelf doesn't stop it: what is missing is ordered, as for a booked rebed. */
export async function setMaterial(scope: Scope & { personId: string }, input: SetMaterial): Promise<JobNow> {
  return runCommand(scope, 'jobs.set-material', input, async (tx, command) => {
    const { companyId } = scope
    const { jobId, stockItemId, quantity, why } = input
    const job = await lockDelivery(tx, companyId, input, { quantity })
    if (!isOpenJob(job.state as JobState))
      throw new AppError('conflict', 'This delivery is over. Nothing was saved; add a new job for more.')
    const item = await tx.stockItem.findFirst({ where: { companyId, id: stockItemId, archivedAt: null }, select: { unit: true } })
    if (!item) throw notFound('stock item')
    if (quantity > 0)
      checkAmounts({ quantity: { kind: stockRule(item.unit), value: quantity, unit: item.unit } }, why ? { quantity: why } : undefined)
    const line = await tx.materialLine.findFirst({ where: { companyId, jobId, stockItemId, state: { in: [...openMaterialStates] } } })
    if (line) {
      await tx.materialLine.update({
        where: { companyId_id: { companyId, id: line.id } },
        // More or less than was loaded is not loaded.
        data: { ...(quantity > 0 ? { quantity, state: 'reserved' } : { state: 'called-off' }), version: { increment: 1 } },
      })
    } else if (quantity > 0) {
      await tx.materialLine.create({ data: { companyId, id: newId(), jobId, stockItemId, quantity, state: 'reserved' } })
    }
    await command.audit('material set', 'job', jobId, { stockItemId, from: line?.quantity ?? 0, to: quantity, why })
    return jobNow(tx, command, jobId)
  })
}
