import type { AddContact } from '@almanac/contract/site-commands'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { asOtherPhone } from '@almanac/records/contact-phones'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { rewriteCustomerTokens } from './rewrite-customer-tokens.ts'

/** Adds a way to reach the one who holds a site, for this site alone or for all of theirs. */
export async function addContact(scope: Scope & { personId: string }, input: AddContact): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'customers.add-contact', input, async (tx, command) => {
    const { companyId } = scope
    const site = await tx.site.findFirst({
      where: { companyId, id: input.siteId, archivedAt: null },
      include: { tenures: { where: { toDay: null }, take: 1 } },
    })
    if (!site) throw notFound('site')
    const customerId = site.tenures[0]?.customerId
    if (!customerId) throw new AppError('conflict', 'This site has no customer right now. Nothing was added; set the customer first.')
    const id = newId()
    await tx.contact.create({
      data: {
        companyId,
        id,
        customerId,
        siteId: input.onlyThisSite ? site.id : null,
        role: input.role,
        name: input.name || null,
        phone: input.phone || null,
        otherPhone: asOtherPhone(input.otherPhones ?? []),
        email: input.email || null,
        language: input.language,
      },
    })
    await rewriteCustomerTokens(tx, companyId, customerId)
    await command.audit('added', 'contact', id, { customerId, role: input.role })
    await command.announce('contact', id, 1)
    return { id, version: 1 }
  })
}
