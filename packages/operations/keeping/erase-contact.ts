import type { EraseContact, Erased, ErasedCounts } from '@almanac/contract/erase'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { recordsAround } from '@almanac/database/sql/erase-texts'
import { phonesOf } from '@almanac/records/contact-phones'
import { AppError, notFound } from '@almanac/runtime/errors'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { clearContacts } from './clear-contacts.ts'
import { PATIENCE } from './erase-patience.ts'
import { eraseTraces } from './erase-traces.ts'
import { tryOut } from './try-out.ts'

/** Erases a contact in a transaction. `version`: null where it is only tried out. Answers what went. */
async function contactGoes(tx: Tx, command: Command, id: string, version: number | null): Promise<ErasedCounts> {
  const { companyId } = command
  const contact = await tx.contact.findFirst({
    where: { companyId, id, erasedAt: null },
    include: { customer: { include: { tenures: { select: { siteId: true } } } } },
  })
  if (!contact) throw notFound('contact')
  if (contact.name && contact.name.trim().toLowerCase() === contact.customer.name.trim().toLowerCase())
    throw new AppError('conflict', 'This contact and the customer have the same name. Nothing was erased; erase the customer instead.')
  const around = await recordsAround(tx, companyId, contact.customerId)
  if (version !== null && contact.version !== version)
    await expectChanged(0, 'contact', version, {}, async () => ({ version: contact.version }))
  const messages = await clearContacts(tx, command, [id])
  const known = (...values: (string | null)[]) => values.filter((value): value is string => Boolean(value?.trim()))
  const { name, email } = contact
  const traces = { names: known(name), phones: phonesOf(contact), emails: known(email) }
  const { places, exports } = await eraseTraces(tx, command, traces, { own: [id], around })
  await rewriteSiteTokens(
    tx,
    companyId,
    contact.customer.tenures.map((one) => one.siteId),
  )
  return { contacts: 1, messages, listLines: 0, pictures: 0, exports, places }
}

/** What erasing a contact would take; nothing is changed. */
export const previewEraseContact = (scope: Scope & { personId: string }, { contactId }: { contactId: string }): Promise<ErasedCounts> =>
  tryOut(scope, 'keeping.erase-contact', (tx, command) => contactGoes(tx, command, contactId, null))

/** Erases one contact of a customer who stays. A contact who bears the customer's own name is the customer: then it is the customer who is to be erased. */
export async function eraseContact(scope: Scope & { personId: string }, input: EraseContact): Promise<Erased> {
  const { contactId: id, version } = input
  const work = async (tx: Tx, command: Command) => {
    const { places } = await contactGoes(tx, command, id, version)
    await command.audit('erased', 'contact', id, { places })
    return { id, places }
  }
  return runCommand(scope, 'keeping.erase-contact', input, work, PATIENCE)
}
