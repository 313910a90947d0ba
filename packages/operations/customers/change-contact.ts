import type { ChangeContact } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { asOtherPhone, otherPhonesOf } from '@almanac/records/contact-phones'
import { notFound } from '@almanac/runtime/errors'
import { changesOf } from '../shared/changes-of.ts'
import { rewriteCustomerTokens } from './rewrite-customer-tokens.ts'

/** Changes how a contact is reached. A number that is gone may leave a reminder without address, so reminders are looked at again. */
export async function changeContact(scope: Scope & { personId: string }, input: ChangeContact): Promise<{ id: string; version: number }> {
  const { commandId: _, contactId, version, ...sent } = input
  return runCommand(scope, 'customers.change-contact', input, async (tx, command) => {
    const { companyId } = scope
    const contact = await tx.contact.findFirst({ where: { companyId, id: contactId, archivedAt: null } })
    if (!contact) throw notFound('contact')
    const { count } = await tx.contact.updateMany({
      where: { companyId, id: contactId, version },
      data: {
        role: sent.role,
        name: sent.name || null,
        phone: sent.phone || null,
        otherPhone: sent.otherPhones && asOtherPhone(sent.otherPhones),
        email: sent.email || null,
        language: sent.language,
        version: { increment: 1 },
      },
    })
    await expectChanged(count, 'contact', version, sent, async () => {
      const row = await tx.contact.findFirst({ where: { companyId, id: contactId } })
      if (!row) return row
      const { role, language } = row
      const [name, phone, email] = [row.name ?? '', row.phone ?? '', row.email ?? '']
      return { version: row.version, role, name, phone, otherPhones: otherPhonesOf(row), email, language }
    })
    await rewriteCustomerTokens(tx, companyId, contact.customerId)
    await command.audit(
      'changed',
      'contact',
      contactId,
      changesOf({ ...contact, otherPhones: otherPhonesOf(contact) }, sent, ['name', 'phone', 'otherPhones', 'email']),
    )
    await command.announce('contact', contactId, version + 1)
    await command.enqueue('raise-reminders', {}, companyId)
    return { id: contactId, version: version + 1 }
  })
}
