import type { EraseContact, Erased } from '@almanac/contract/erase'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { recordsAround } from '@almanac/database/sql/erase-texts'
import { AppError, notFound } from '@almanac/runtime/errors'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { clearContacts } from './clear-contacts.ts'
import { PATIENCE } from './erase-patience.ts'
import { eraseTraces } from './erase-traces.ts'

/** Erases one contact of a customer who stays. A contact who bears the customer's own name is the customer: then it is the customer who is to be erased. */
export async function eraseContact(scope: Scope & { personId: string }, input: EraseContact): Promise<Erased> {
  const { contactId: id, version } = input
  return runCommand(
    scope,
    'keeping.erase-contact',
    input,
    async (tx, command) => {
      const { companyId } = scope
      const contact = await tx.contact.findFirst({
        where: { companyId, id, erasedAt: null },
        include: { customer: { include: { tenures: { select: { siteId: true } } } } },
      })
      if (!contact) throw notFound('contact')
      if (contact.name && contact.name.trim().toLowerCase() === contact.customer.name.trim().toLowerCase())
        throw new AppError('conflict', 'This contact and the customer have the same name. Nothing was erased; erase the customer instead.')
      const around = await recordsAround(tx, companyId, contact.customerId)
      if (contact.version !== version) await expectChanged(0, 'contact', version, {}, async () => ({ version: contact.version }))
      await clearContacts(tx, command, [id])
      const known = (value: string | null) => (value?.trim() ? [value] : [])
      const traces = { names: known(contact.name), phones: known(contact.phone), emails: known(contact.email) }
      const places = await eraseTraces(tx, command, traces, { own: [id], around })
      await rewriteSiteTokens(
        tx,
        companyId,
        contact.customer.tenures.map((one) => one.siteId),
      )
      await command.audit('erased', 'contact', id, { places })
      return { id, places }
    },
    PATIENCE,
  )
}
