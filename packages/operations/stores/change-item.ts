import type { ArchiveItem, ChangeItem } from '@almanac/contract/stores'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { reservedOf } from '@almanac/database/read/free-stock'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError, notFound } from '@almanac/runtime/errors'
import { formatAmount } from '@almanac/units/amount-words'
import { changesOf } from '../shared/changes-of.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { itemFacts } from './item-facts.ts'

type Caller = Scope & { personId: string }
type Changed = { stockItemId: string; version: number }

/** The item, locked, as the screen saw it. */
async function itemAt(tx: Tx, companyId: string, { stockItemId: id, version }: Changed, sent: Record<string, unknown>) {
  await lockRows(tx, companyId, 'stock_item', [id])
  const item = await tx.stockItem.findFirst({ where: { companyId, id, archivedAt: null } })
  if (!item) throw notFound('stock item')
  await expectChanged(item.version === version ? 1 : 0, 'stock item', version, sent, async () => ({ ...item, archivedAt: undefined }))
  return item
}

/** Changes what an item of the stores is called, holds and costs. What kind it is, and by what it is counted, stays: its movements speak of that. */
export async function changeItem(scope: Caller, input: ChangeItem): Promise<Changed> {
  return runCommand(scope, 'stores.change-item', input, async (tx, command) => {
    const { companyId } = scope
    const { commandId: _, stockItemId, version, ...sent } = input
    const item = await itemAt(tx, companyId, input, sent)
    const facts = itemFacts(item.kind, sent)
    const namesake = await tx.stockItem.findUnique({ where: { companyId_name: { companyId, name: facts.name } }, select: { id: true } })
    if (namesake && namesake.id !== stockItemId)
      throw new AppError('conflict', `Another item has the name ${facts.name}. Nothing was saved; choose another.`, { field: 'name' })
    await tx.stockItem.update({ where: { companyId_id: { companyId, id: stockItemId } }, data: { ...facts, version: { increment: 1 } } })
    await command.audit('changed', 'stock-item', stockItemId, changesOf(item, facts))
    await command.announce('stock-item', stockItemId, version + 1)
    return { stockItemId, version: version + 1 }
  })
}

/** Takes an item out of the stores' lists; its movements stay. Refused while some of it is on hand or set aside for a job. */
export async function archiveItem(scope: Caller, input: ArchiveItem): Promise<Changed> {
  return runCommand(scope, 'stores.archive-item', input, async (tx, command) => {
    const { companyId } = scope
    const { stockItemId, version } = input
    const item = await itemAt(tx, companyId, input, {})
    const display = await companyFacts(tx, companyId)
    if (item.onHand > 0)
      throw new AppError(
        'conflict',
        `${formatAmount(item.onHand, item.unit, display)} of ${item.name} are still on hand. It was not archived; count it to 0 first.`,
      )
    if ((await reservedOf(tx, companyId, { stockItemId })).length > 0)
      throw new AppError('conflict', `Booked work still takes ${item.name}. It was not archived; it can be once that work is done.`)
    await tx.stockItem.update({
      where: { companyId_id: { companyId, id: stockItemId } },
      data: { archivedAt: command.at, version: { increment: 1 } },
    })
    await command.audit('archived', 'stock-item', stockItemId)
    await command.announce('stock-item', stockItemId, version + 1)
    return { stockItemId, version: version + 1 }
  })
}
