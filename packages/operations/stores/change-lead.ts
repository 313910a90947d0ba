import type { ChangeLeadInput } from '@almanac/contract/stores'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { changesOf } from '../shared/changes-of.ts'

/** How many days an item takes from the order to the shelf. */
export async function changeLead(scope: Scope & { personId: string }, input: ChangeLeadInput): Promise<{ version: number }> {
  return runCommand(scope, 'stores.change-lead', input, async (tx, command) => {
    const { companyId } = scope
    const { stockItemId, version, leadDays } = input
    const before = await tx.stockItem.findUnique({ where: { companyId_id: { companyId, id: stockItemId } }, select: { leadDays: true } })
    const { count } = await tx.stockItem.updateMany({
      where: { companyId, id: stockItemId, version },
      data: { leadDays, version: { increment: 1 } },
    })
    await expectChanged(count, 'stock item', version, { leadDays }, () =>
      tx.stockItem.findUnique({ where: { companyId_id: { companyId, id: stockItemId } }, select: { version: true, leadDays: true } }),
    )
    await command.audit('lead changed', 'stock-item', stockItemId, changesOf(before ?? {}, { leadDays }))
    await command.announce('stock-item', stockItemId, version + 1)
    return { version: version + 1 }
  })
}
