import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { type MaterialWay, openMaterialStates } from '@almanac/records/stock'
import { moveStock } from './move-stock.ts'

/** Gives a job's customer all that is set aside for it, out of the stores; answers how many lines that were. The job is locked. */
export async function giveMaterials(
  tx: Tx,
  command: Command,
  { jobId, way, visitId }: { jobId: string; way: MaterialWay; visitId: string | null },
): Promise<number> {
  const { companyId } = command
  const lines = await tx.materialLine.findMany({
    where: { companyId, jobId, state: { in: [...openMaterialStates] } },
    orderBy: { id: 'asc' },
  })
  if (lines.length === 0) return 0
  await tx.materialLine.updateMany({
    where: { companyId, id: { in: lines.map((line) => line.id) } },
    data: { state: 'handed-over', way, handedAt: command.at, version: { increment: 1 } },
  })
  await moveStock(
    tx,
    command,
    lines.map(({ stockItemId, quantity }) => ({ stockItemId, quantity: -quantity, reason: 'handed-over' as const, jobId, visitId })),
  )
  await command.announce('kit', jobId)
  return lines.length
}

/** What is set aside for a job goes back to the shelf: `called-off` for good, `reserved` where it only came off a vehicle. */
export async function releaseMaterials(tx: Tx, command: Command, jobId: string, state: 'called-off' | 'reserved'): Promise<void> {
  const { count } = await tx.materialLine.updateMany({
    where: { companyId: command.companyId, jobId, state: { in: state === 'reserved' ? ['picked'] : [...openMaterialStates] } },
    data: { state, version: { increment: 1 } },
  })
  if (count > 0) await command.announce('kit', jobId)
}
