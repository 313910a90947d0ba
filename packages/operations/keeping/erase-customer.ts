import type { EraseCustomer, Erased, ErasedCounts } from '@almanac/contract/erase'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { customersMergedInto } from '@almanac/database/read/mergings'
import { type Command, runCommand } from '@almanac/database/run-command'
import { recordsAround } from '@almanac/database/sql/erase-texts'
import { phonesOf } from '@almanac/records/contact-phones'
import { notFound } from '@almanac/runtime/errors'
import { companyFacts } from '../shared/company-facts.ts'
import { endAgreements } from '../shared/end-agreements.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { clearContacts } from './clear-contacts.ts'
import { clearListRows } from './clear-list-rows.ts'
import { PATIENCE } from './erase-patience.ts'
import { erasePictures } from './erase-pictures.ts'
import { eraseTraces } from './erase-traces.ts'
import { tryOut } from './try-out.ts'

/** Erases a customer in a transaction. `version`: null where it is only tried out. Answers what went. */
async function customerGoes(tx: Tx, command: Command, id: string, version: number | null): Promise<ErasedCounts> {
  const { companyId } = command
  const customer = await tx.customer.findFirst({
    where: { companyId, id, erasedAt: null },
    include: { contacts: true, tenures: { select: { siteId: true, fromDay: true, toDay: true } } },
  })
  if (!customer) throw notFound('customer')
  // Whoever was merged into them is the same person, by another name.
  const sameIds = await customersMergedInto(tx, companyId, id)
  const same = await tx.customer.findMany({ where: { companyId, id: { in: sameIds } }, select: { name: true } })
  const contactIds = customer.contacts.map((one) => one.id)
  const siteIds = [...new Set(customer.tenures.map((one) => one.siteId))]
  const around = await recordsAround(tx, companyId, id)
  const data = { name: 'Erased customer', reference: null, notes: null, matchKey: null, erasedAt: command.at, version: { increment: 1 } }
  const { count } = await tx.customer.updateMany({ where: { companyId, id, version: version ?? customer.version }, data })
  await tx.customer.updateMany({ where: { companyId, id: { in: sameIds } }, data })
  await expectChanged(count, 'customer', version ?? 0, {}, async () => ({ version: customer.version }))
  const { today } = await companyFacts(tx, companyId)
  await endAgreements(tx, command, { customerId: { in: [id, ...sameIds] } }, today, 'erased')
  await tx.site.updateMany({ where: { companyId, id: { in: siteIds } }, data: { matchKey: null } })
  await tx.softener.updateMany({ where: { companyId, siteId: { in: siteIds } }, data: { matchKey: null } })
  const messages = await clearContacts(tx, command, contactIds)
  await tx.phoneCall.updateMany({
    where: { companyId, customerId: id },
    data: { callerName: null, callerPhone: null, version: { increment: 1 } },
  })
  const listLines = await clearListRows(tx, companyId, id)
  const pictures = await erasePictures(tx, command, customer.tenures)
  const known = (values: (string | null)[]) => [...new Set(values.filter((one): one is string => Boolean(one?.trim())))]
  const traces = {
    names: known([customer.name, ...same.map((one) => one.name), ...customer.contacts.map((one) => one.name)]),
    phones: known(customer.contacts.flatMap(phonesOf)),
    emails: known(customer.contacts.map((one) => one.email)),
  }
  const { places, exports } = await eraseTraces(tx, command, traces, { own: [id, ...sameIds, ...contactIds], around })
  await rewriteSiteTokens(tx, companyId, siteIds)
  return { contacts: contactIds.length, messages, listLines, pictures, exports, places }
}

/** What erasing a customer would take; nothing is changed. */
export const previewEraseCustomer = (scope: Scope & { personId: string }, { customerId }: { customerId: string }): Promise<ErasedCounts> =>
  tryOut(scope, 'keeping.erase-customer', (tx, command) => customerGoes(tx, command, customerId, null))

/**
 * Erases a customer with all their contacts: name, number, notes, ways to reach them, messages, their lines of lists, photographs and
 * signatures of visits to them, and what names them anywhere else. The sites, what
 * stands there and what was done stay, held by a customer without a name.
 */
export async function eraseCustomer(scope: Scope & { personId: string }, input: EraseCustomer): Promise<Erased> {
  const { customerId: id, version } = input
  const work = async (tx: Tx, command: Command) => {
    const { contacts, places, pictures } = await customerGoes(tx, command, id, version)
    await command.audit('erased', 'customer', id, { contacts, places, pictures })
    await command.announce('customer', id, version + 1)
    return { id, places }
  }
  return runCommand(scope, 'keeping.erase-customer', input, work, PATIENCE)
}
