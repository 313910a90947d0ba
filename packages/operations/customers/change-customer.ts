import type { ChangeCustomer } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { changesOf } from '../shared/changes-of.ts'
import { rewriteCustomerTokens } from './rewrite-customer-tokens.ts'

/** Changes a customer's name, number and notes; all sites they hold are found by the new words. */
export async function changeCustomer(scope: Scope & { personId: string }, input: ChangeCustomer): Promise<{ id: string; version: number }> {
  const { commandId: _, customerId, version, ...sent } = input
  return runCommand(scope, 'customers.change-customer', input, async (tx, command) => {
    const { companyId } = scope
    const before = await tx.customer.findFirst({ where: { companyId, id: customerId } })
    const { count } = await tx.customer.updateMany({
      where: { companyId, id: customerId, version, archivedAt: null },
      data: { name: sent.name, reference: sent.reference || null, notes: sent.notes || null, version: { increment: 1 } },
    })
    await expectChanged(count, 'customer', version, sent, async () => {
      const row = await tx.customer.findFirst({ where: { companyId, id: customerId, archivedAt: null } })
      return row && { version: row.version, name: row.name, reference: row.reference ?? '', notes: row.notes ?? '' }
    })
    await rewriteCustomerTokens(tx, companyId, customerId)
    await command.audit('changed', 'customer', customerId, changesOf(before ?? {}, sent, ['name', 'reference', 'notes']))
    await command.announce('customer', customerId, version + 1)
    return { id: customerId, version: version + 1 }
  })
}
