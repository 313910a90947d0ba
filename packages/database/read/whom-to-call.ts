import type { WhomToCall } from '@almanac/contract/site-facts'
import { otherPhonesOf } from '@almanac/records/contact-phones'
import { type ContactRole, contactRoles } from '@almanac/records/contact-role'
import type { Tx } from '../client.ts'

type Contact = { id: string; name: string | null; role: string; phone: string | null; otherPhones: string[]; mayCall: boolean | null }

/**
 * Who is called about a site: the one who pays before the one who lives there, the landlord, the key-holder as in the list of roles; whoever asked not to be
 * called comes last, and whoever has no number is left out.
 */
export function whomToCall(customerName: string | null, contacts: readonly Contact[]): WhomToCall {
  const rank = (contact: Contact) =>
    (contact.mayCall === false ? contactRoles.length : 0) + contactRoles.indexOf(contact.role as ContactRole)
  const [first] = contacts
    .map((contact) => ({ contact, numbers: [contact.phone, ...contact.otherPhones].flatMap((phone) => phone || []) }))
    .filter(({ numbers }) => numbers.length > 0)
    .sort((a, b) => rank(a.contact) - rank(b.contact) || (a.contact.id < b.contact.id ? -1 : 1))
  const [phone, ...otherPhones] = first?.numbers ?? []
  const called =
    first && phone
      ? {
          name: first.contact.name ?? customerName,
          role: first.contact.role as ContactRole,
          phone,
          otherPhones,
          mayCall: first.contact.mayCall,
        }
      : null
  return { customerName, called }
}

type Held = { siteId: string; customerName: string; contacts: (Omit<Contact, 'otherPhones'> & { otherPhone: string | null })[] }

/** Whom to call about each of some sites, in one statement for all of them; a site that nobody holds has neither. */
export async function readWhomToCall(tx: Tx, companyId: string, siteIds: readonly string[]): Promise<Map<string, WhomToCall>> {
  const held = await tx.$queryRaw<Held[]>`
    select h.site_id as "siteId", c.name as "customerName", coalesce(k.contacts, '[]') as contacts
    from tenure h join customer c on c.company_id = h.company_id and c.id = h.customer_id
    left join lateral (
      select jsonb_agg(jsonb_build_object('id', k.id, 'name', k.name, 'role', k.role, 'phone', k.phone, 'otherPhone', k.other_phone, 'mayCall', n.granted)) as contacts
      from contact k left join consent n on n.company_id = k.company_id and n.contact_id = k.id and n.channel = 'phone'
      where k.company_id = c.company_id and k.customer_id = c.id and k.archived_at is null and (k.site_id is null or k.site_id = h.site_id)
        and (k.phone is not null or k.other_phone is not null)) k on true
    where h.company_id = ${companyId}::uuid and h.site_id = any(${[...new Set(siteIds)]}::uuid[]) and h.to_day is null order by h.id`
  return new Map(
    held.map(({ siteId, customerName, contacts }) => {
      const known = contacts.map(({ otherPhone, ...contact }) => ({ ...contact, otherPhones: otherPhonesOf({ otherPhone }) }))
      return [siteId, whomToCall(customerName, known)]
    }),
  )
}

/** A site that nobody holds. */
export const NOBODY_TO_CALL: WhomToCall = { customerName: null, called: null }
