import type { ArchiveContact } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { rewriteCustomerTokens } from './rewrite-customer-tokens.ts'

/** Puts a contact away: it is shown and written to no more. */
export async function archiveContact(scope: Scope & { personId: string }, input: ArchiveContact): Promise<{ id: string; version: number }> {
  const { contactId, version } = input
  return runCommand(scope, 'customers.archive-contact', input, async (tx, command) => {
    const { companyId } = scope
    const contact = await tx.contact.findFirst({ where: { companyId, id: contactId, archivedAt: null } })
    if (!contact) throw notFound('contact')
    const { count } = await tx.contact.updateMany({
      where: { companyId, id: contactId, version },
      data: { archivedAt: command.at, version: { increment: 1 } },
    })
    await expectChanged(count, 'contact', version, { archived: true }, async () => ({ version: contact.version, archived: false }))
    await rewriteCustomerTokens(tx, companyId, contact.customerId)
    await command.audit('put away', 'contact', contactId)
    await command.announce('contact', contactId, version + 1)
    await command.enqueue('raise-reminders', {}, companyId)
    return { id: contactId, version: version + 1 }
  })
}
