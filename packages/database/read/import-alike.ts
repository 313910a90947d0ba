import { phonesOf } from '@almanac/records/contact-phones'
import type { Tx } from '../client.ts'

/** A customer on record with what tells them from others, and their places with the softeners there. */
export type CustomerOnRecord = {
  id: string
  name: string
  reference: string | null
  phones: string[]
  emails: string[]
  sites: {
    id: string
    street: string | null
    postcode: string | null
    town: string | null
    softeners: { id: string; label: string; location: string | null }[]
  }[]
}

const given = (texts: readonly (string | null)[]): string[] => texts.filter((text) => text !== null)

/** All customers of the company that are not archived, to look for those a list speaks of by other keys; people and places by what is on record today. */
export async function readCustomersOnRecord(tx: Tx, companyId: string): Promise<CustomerOnRecord[]> {
  const live = { archivedAt: null }
  const found = await tx.customer.findMany({
    where: { companyId, ...live },
    select: {
      ...{ id: true, name: true, reference: true },
      contacts: { where: live, select: { phone: true, otherPhone: true, email: true } },
      tenures: { where: { toDay: null }, select: { siteId: true } },
    },
    orderBy: { id: 'asc' },
  })
  const sites = await tx.site.findMany({
    where: { companyId, ...live },
    select: {
      ...{ id: true, street: true, postcode: true, town: true },
      softeners: { where: live, select: { id: true, label: true, location: true } },
    },
  })
  const siteOf = new Map(sites.map((site) => [site.id, site]))
  return found.map(({ contacts, tenures, ...customer }) => ({
    ...customer,
    phones: given(contacts.flatMap(phonesOf)),
    emails: given(contacts.map((one) => one.email)),
    sites: tenures.flatMap(({ siteId }) => siteOf.get(siteId) ?? []),
  }))
}
