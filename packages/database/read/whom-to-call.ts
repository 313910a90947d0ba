import type { WhomToCall } from '@almanac/contract/site-facts'
import { type ContactRole, contactRoles } from '@almanac/records/contact-role'
import type { Tx } from '../client.ts'

type Contact = { id: string; name: string | null; role: string; phone: string | null; otherPhone: string | null; mayCall: boolean | null }

/**
 * Who is called about a site: the one who pays before the one who lives there, the landlord, the key-holder as in the list of roles; whoever asked not to be
 * called comes last, and whoever has no number is left out.
 */
export function whomToCall(customerName: string | null, contacts: readonly Contact[]): WhomToCall {
  const rank = (contact: Contact) =>
    (contact.mayCall === false ? contactRoles.length : 0) + contactRoles.indexOf(contact.role as ContactRole)
  const [first] = contacts
    .map((contact) => ({ contact, numbers: [contact.phone, contact.otherPhone].flatMap((phone) => phone || []) }))
    .filter(({ numbers }) => numbers.length > 0)
    .sort((a, b) => rank(a.contact) - rank(b.contact) || (a.contact.id < b.contact.id ? -1 : 1))
  const [phone, otherPhone = null] = first?.numbers ?? []
  const called =
    first && phone
      ? {
          name: first.contact.name ?? customerName,
          role: first.contact.role as ContactRole,
          phone,
          otherPhone,
          mayCall: first.contact.mayCall,
        }
      : null
  return { customerName, called }
}

/** Whom to call about each of some sites; a site that nobody holds has neither. */
export async function readWhomToCall(tx: Tx, companyId: string, siteIds: readonly string[]): Promise<Map<string, WhomToCall>> {
  const tenures = await tx.tenure.findMany({
    where: { companyId, siteId: { in: [...new Set(siteIds)] }, toDay: null },
    select: {
      siteId: true,
      customer: {
        select: {
          name: true,
          contacts: {
            where: { archivedAt: null, OR: [{ phone: { not: null } }, { otherPhone: { not: null } }] },
            select: {
              id: true,
              siteId: true,
              name: true,
              role: true,
              phone: true,
              otherPhone: true,
              consents: { where: { channel: 'phone' }, select: { granted: true } },
            },
          },
        },
      },
    },
    orderBy: { id: 'asc' },
  })
  return new Map(
    tenures.map(({ siteId, customer }) => {
      const contacts = customer.contacts
        .filter((contact) => contact.siteId === null || contact.siteId === siteId)
        .map(({ consents, ...contact }) => ({ ...contact, mayCall: consents[0]?.granted ?? null }))
      return [siteId, whomToCall(customer.name, contacts)]
    }),
  )
}

/** A site that nobody holds. */
export const NOBODY_TO_CALL: WhomToCall = { customerName: null, called: null }
