import type { Holder } from '@almanac/contract/site-commands'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

/** The customer who takes a site: one of the company's, or a new one with a first contact and the consents they gave. Answers the customer's id. */
export async function takeHolder(tx: Tx, command: Command, holder: Holder, today: string): Promise<string> {
  const { companyId } = command
  if (holder.kind === 'known') {
    const customer = await tx.customer.findFirst({ where: { companyId, id: holder.customerId, archivedAt: null }, select: { id: true } })
    if (!customer) throw notFound('customer')
    return customer.id
  }
  const customerId = newId()
  await tx.customer.create({ data: { companyId, id: customerId, name: holder.name } })
  const contactId = newId()
  await tx.contact.create({
    data: {
      companyId,
      id: contactId,
      customerId,
      role: 'payer',
      name: holder.name,
      phone: holder.phone || null,
      email: holder.email || null,
    },
  })
  for (const channel of new Set(holder.consents)) {
    await tx.consent.create({
      data: { companyId, id: newId(), contactId, channel, granted: true, source: 'call', sinceDay: dateOf(today) },
    })
  }
  await command.audit('customer added', 'customer', customerId, { contactId, consents: holder.consents })
  return customerId
}
