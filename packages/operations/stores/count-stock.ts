import type { CountInput } from '@almanac/contract/stores'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { stockRule } from '@almanac/units/amount-kinds'
import { checkAmounts } from '../shared/check-amounts.ts'

/** What was counted stands from now on: the difference becomes a movement, and open discrepancies of the item are settled. */
export async function countStock(
  scope: Scope & { personId: string },
  input: CountInput,
): Promise<{ stockItemId: string; onHand: number; difference: number }> {
  const { companyId } = scope
  const { stockItemId, version, counted, why } = input
  return runCommand(scope, 'stores.count', input, async (tx, command) => {
    const where = { companyId_id: { companyId, id: stockItemId } }
    const before = await tx.stockItem.findUnique({ where })
    if (!before || before.archivedAt) throw notFound('stock item')
    checkAmounts({ counted: { kind: stockRule(before.unit), value: counted, unit: before.unit } }, why ? { counted: why } : undefined)
    const { count } = await tx.stockItem.updateMany({
      where: { companyId, id: stockItemId, version },
      data: { onHand: counted, version: { increment: 1 } },
    })
    await expectChanged(count, 'stock item', version, { counted }, () => tx.stockItem.findUnique({ where }))
    const difference = counted - before.onHand
    await tx.movement.create({
      data: { companyId, id: newId(), stockItemId, quantity: difference, reason: 'counted', at: command.at, personId: command.personId },
    })
    await tx.discrepancy.updateMany({
      where: { companyId, stockItemId, settledAt: null },
      data: { settledAt: command.at, version: { increment: 1 } },
    })
    await command.audit('counted', 'stock-item', stockItemId, { counted, difference, why })
    await command.announce('stock-item', stockItemId, version + 1)
    return { stockItemId, onHand: counted, difference }
  })
}
