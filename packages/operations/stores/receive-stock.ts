import type { ReceiveInput } from '@almanac/contract/stores'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { stockRule } from '@almanac/units/amount-kinds'
import { checkAmounts } from '../shared/check-amounts.ts'
import { moveStock } from '../shared/move-stock.ts'

/** Takes a delivery into the stores. */
export async function receiveStock(
  scope: Scope & { personId: string },
  input: ReceiveInput,
): Promise<{ stockItemId: string; onHand: number }> {
  const { companyId } = scope
  const { stockItemId, quantity, why } = input
  return runCommand(scope, 'stores.receive', input, async (tx, command) => {
    const item = await tx.stockItem.findUnique({ where: { companyId_id: { companyId, id: stockItemId } }, select: { unit: true } })
    const rule = { ...stockRule(item?.unit ?? ''), above: true }
    checkAmounts({ quantity: { kind: rule, value: quantity, unit: item?.unit ?? '' } }, why ? { quantity: why } : undefined)
    await moveStock(tx, command, [{ stockItemId, quantity, reason: 'received' }])
    await command.audit('received', 'stock-item', stockItemId, { quantity, why })
    const { onHand } = await tx.stockItem.findUniqueOrThrow({ where: { companyId_id: { companyId, id: stockItemId } } })
    return { stockItemId, onHand }
  })
}
