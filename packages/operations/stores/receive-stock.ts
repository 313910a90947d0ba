import type { ReceiveInput } from '@almanac/contract/stores'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import type * as z from 'zod'
import { moveStock } from '../shared/move-stock.ts'

/** Takes a delivery into the stores. */
export async function receiveStock(
  scope: Scope & { personId: string },
  input: z.infer<typeof ReceiveInput>,
): Promise<{ stockItemId: string; onHand: number }> {
  const { companyId } = scope
  const { stockItemId, quantity } = input
  return runCommand(scope, 'stores.receive', input, async (tx, command) => {
    await moveStock(tx, command, [{ stockItemId, quantity, reason: 'received' }])
    await command.audit('received', 'stock-item', stockItemId, { quantity })
    const { onHand } = await tx.stockItem.findUniqueOrThrow({ where: { companyId_id: { companyId, id: stockItemId } } })
    return { stockItemId, onHand }
  })
}
