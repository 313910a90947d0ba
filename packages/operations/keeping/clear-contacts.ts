import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { statesBefore } from '@almanac/service-rules/messages/message-states'

const GONE = '[erased]'

/**
 * Takes names, numbers and addresses off contacts, and what was or was to be said to them off their messages, with the files that went along; what was
 * due to be said is dropped. Answers how many messages.
 */
export async function clearContacts(tx: Tx, command: Command, contactIds: readonly string[]): Promise<number> {
  const { companyId, at } = command
  const of = { companyId, contactId: { in: [...contactIds] } }
  await tx.contact.updateMany({
    where: { companyId, id: { in: [...contactIds] } },
    data: {
      name: null,
      phone: null,
      otherPhone: null,
      email: null,
      deadEmail: null,
      language: null,
      archivedAt: at,
      erasedAt: at,
      version: { increment: 1 },
    },
  })
  await tx.reminder.updateMany({
    where: { ...of, state: { in: ['waiting', 'held'] } },
    data: { state: 'dropped', stateReason: 'The contact was erased.', version: { increment: 1 } },
  })
  await tx.message.updateMany({
    where: { ...of, state: { in: statesBefore('withdraw') } },
    data: { state: 'withdrawn', version: { increment: 1 } },
  })
  const { count } = await tx.message.updateMany({
    where: of,
    data: { address: GONE, subject: GONE, body: GONE, version: { increment: 1 } },
  })
  // A report names the customer, whoever signed and whom it went to: no copy stays of any that went to one of theirs.
  const { count: files } = await tx.message.updateMany({
    where: { companyId, fileState: 'stored', contact: { customer: { contacts: { some: { id: { in: [...contactIds] } } } } } },
    data: { fileState: 'erased', version: { increment: 1 } },
  })
  if (files > 0) await command.enqueue('remove-pictures', {}, companyId)
  await tx.reminderAnswer.updateMany({
    where: { companyId, reminder: { contactId: of.contactId } },
    data: { days: null, version: { increment: 1 } },
  })
  for (const id of contactIds) await command.announce('contact', id)
  await command.announce('reminders', companyId)
  return count
}
