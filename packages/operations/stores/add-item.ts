import type { AddItem } from '@almanac/contract/stores'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { unitsOfStock } from '@almanac/records/stock'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { stockRule } from '@almanac/units/amount-kinds'
import { checkAmounts } from '../shared/check-amounts.ts'
import { moveStock } from '../shared/move-stock.ts'
import { type ItemOf, itemFacts } from './item-facts.ts'

/** Adds an item to the stores, with what is on hand as its first count. The name of an archived one of the same kind brings that back, its movements with it. */
export async function addItem(scope: Scope & { personId: string }, input: AddItem): Promise<{ stockItemId: string; version: number }> {
  const { companyId } = scope
  const { kind, unit, onHand, why } = input
  if (!unitsOfStock[kind].includes(unit))
    throw new AppError('invalid', `Such an item is counted by ${unitsOfStock[kind].join(' or ')}. Nothing was saved.`, { field: 'unit' })
  return runCommand(scope, 'stores.add-item', input, async (tx, command) => {
    checkAmounts({ onHand: { kind: stockRule(unit), value: onHand, unit } }, why ? { onHand: why } : undefined)
    const facts = itemFacts(kind, input)
    const before = await tx.stockItem.findUnique({ where: { companyId_name: { companyId, name: facts.name } } })
    if (before && before.archivedAt === null)
      throw new AppError('conflict', `${facts.name} is in the stores already. Nothing was saved; change that one, or choose another name.`)
    if (before && (before.kind !== kind || before.unit !== unit))
      throw new AppError(
        'conflict',
        `${facts.name} was in the stores before, as another kind of thing or counted otherwise, and its movements speak of that. Nothing was saved; choose another name.`,
        { field: 'name' },
      )
    const data = { ...facts, kind, unit, archivedAt: null } satisfies ItemOf
    const item = before
      ? await tx.stockItem.update({
          where: { companyId_id: { companyId, id: before.id } },
          data: { ...data, version: { increment: 1 } },
        })
      : await tx.stockItem.create({ data: { companyId, id: newId(), ...data } })
    if (onHand !== item.onHand) await moveStock(tx, command, [{ stockItemId: item.id, quantity: onHand - item.onHand, reason: 'counted' }])
    await command.audit('added', 'stock-item', item.id, { kind, unit, onHand })
    await command.announce('stock-item', item.id)
    return { stockItemId: item.id, version: item.version + (onHand !== item.onHand ? 1 : 0) }
  })
}
