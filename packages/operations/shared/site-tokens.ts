import type { Tx } from '@almanac/database/client'
import { writeSiteTokens } from '@almanac/database/sql/write-site-tokens'
import { phonesOf } from '@almanac/records/contact-phones'
import { cardToken, modelText, tokensFor } from '@almanac/service-rules/search/search-tokens'

/** Sites whose words are worked out at one time: a few hundred tokens each, so that a chunk stays a few MB. */
const CHUNK = 500

/**
 * Writes the search tokens of some sites anew, from the site, who holds it, its contacts, its softeners and their tanks. Call it in the transaction that changed any of them;
 * set-based, so an import may pass thousands of ids. Ids of other companies have no rows here and change nothing.
 */
export async function rewriteSiteTokens(tx: Tx, companyId: string, siteIds: readonly string[]): Promise<void> {
  const ids = [...new Set(siteIds)]
  for (let start = 0; start < ids.length; start += CHUNK) await rewriteChunk(tx, companyId, ids.slice(start, start + CHUNK))
}

async function rewriteChunk(tx: Tx, companyId: string, siteIds: string[]): Promise<void> {
  const sites = await tx.site.findMany({
    where: { companyId, id: { in: siteIds } },
    select: {
      id: true,
      archivedAt: true,
      label: true,
      street: true,
      town: true,
      postcode: true,
      contacts: { where: { archivedAt: null }, select: PERSON_WORDS },
      tenures: { where: { toDay: null }, select: { customer: { select: CUSTOMER_WORDS } } },
      softeners: { where: { archivedAt: null }, select: SOFTENER_WORDS },
    },
  })
  const tokens: string[] = []
  const tokenSites: string[] = []
  for (const site of sites) {
    if (site.archivedAt) continue
    for (const token of wordsOf(site)) {
      tokens.push(token)
      tokenSites.push(site.id)
    }
  }
  await writeSiteTokens(tx, companyId, siteIds, { tokens, siteIds: tokenSites })
}

const PERSON_WORDS = { name: true, phone: true, otherPhone: true } as const
const CUSTOMER_WORDS = {
  name: true,
  reference: true,
  // A contact tied to another site of the same customer belongs to that site's words.
  contacts: { where: { archivedAt: null, siteId: null }, select: PERSON_WORDS },
} as const
const SOFTENER_WORDS = {
  label: true,
  tanks: { where: { archivedAt: null }, select: { diameterIn: true, heightIn: true, sizeAsWritten: true } },
  valves: { where: { archivedAt: null, cardId: { not: null } }, select: { cardId: true } },
} as const

type SiteWords = {
  label: string
  street: string | null
  town: string | null
  postcode: string | null
  contacts: Person[]
  tenures: { customer: { name: string; reference: string | null; contacts: Person[] } }[]
  softeners: {
    label: string
    tanks: { diameterIn: number | null; heightIn: number | null; sizeAsWritten: string | null }[]
    valves: { cardId: string | null }[]
  }[]
}
type Person = { name: string | null; phone: string | null; otherPhone: string | null }

function wordsOf(site: SiteWords): string[] {
  const customers = site.tenures.map((tenure) => tenure.customer)
  const people = [...site.contacts, ...customers.flatMap((customer) => customer.contacts)]
  const tanks = site.softeners.flatMap((softener) => softener.tanks)
  const texts = [
    site.label,
    site.street,
    site.town,
    site.postcode,
    ...customers.flatMap((customer) => [customer.name, customer.reference]),
    ...people.map((person) => person.name),
    ...site.softeners.map((softener) => modelText(softener.label)),
    ...tanks.map((tank) => tank.sizeAsWritten),
    ...tanks.map((tank) => (tank.diameterIn && tank.heightIn ? `${tank.diameterIn}x${tank.heightIn}` : null)),
  ]
  const cards = site.softeners.flatMap((softener) => softener.valves.map((valve) => valve.cardId))
  return [...tokensFor(present(texts), people.flatMap(phonesOf)), ...new Set(present(cards).map(cardToken))]
}

const present = (texts: (string | null)[]): string[] => texts.filter((text) => text !== null && text !== '') as string[]
