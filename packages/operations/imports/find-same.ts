import { setImmediate } from 'node:timers/promises'
import type { Tx } from '@almanac/database/client'
import { type CustomerOnRecord, readCustomersOnRecord } from '@almanac/database/read/import-alike'
import { readPresentCustomers, readPresentSites, readPresentSofteners } from '@almanac/database/read/import-present'
import { phonesOf } from '@almanac/records/contact-phones'
import { placeKeys } from '@almanac/service-rules/import/match-keys'
import { normaliseText } from '@almanac/service-rules/import/normalise'
import { keyed, type ListedPerson, likeness, sharersOf } from '@almanac/service-rules/import/same-customer'
import type { Display } from '@almanac/units/display'
import { formatList } from '@almanac/units/format-list'
import type { DesiredEntity } from './entities-from-record.ts'
import { columnsOf, type Value } from './facts.ts'
import type { ExistingRecords } from './import-plan-context.ts'

type Found = Pick<ExistingRecords, 'customers' | 'sites' | 'softeners'>
/** What is found beside the match keys, under the keys of the list; what to say of a line; and who may be meant, for a person to decide. */
export type SameFound = Found & { notes: Map<number, string[]>; mayBe: Map<number, { name: string; reason: string }> }

/** Fifty thousand customers take over a second: the requests of others get their turn between. */
const breathe = async (at: number) => (at % 500 === 499 ? void (await setImmediate()) : undefined)
const text = (value: Value | undefined) => (typeof value === 'string' && value !== '' ? value : null)
const texts = (...values: (Value | undefined)[]) => values.flatMap((value) => text(value) ?? [])

/** The customers of the list that no key found, each with the contact and places the list gives. */
function peopleOf(
  things: readonly DesiredEntity[],
  isKnown: (key: string) => boolean,
): Map<DesiredEntity, ListedPerson & { sites: DesiredEntity[]; softeners: DesiredEntity[] }> {
  const own = Map.groupBy(things, (thing) => thing.parents.customer)
  const people = new Map<DesiredEntity, ListedPerson & { sites: DesiredEntity[]; softeners: DesiredEntity[] }>()
  for (const customer of things) {
    if (customer.kind !== 'customer' || isKnown(customer.key)) continue
    const rest = own.get(customer.key) ?? []
    const contact = columnsOf(rest.find((one) => one.kind === 'contact')?.facts ?? {})
    const sites = rest.filter((one) => one.kind === 'site')
    const { name, reference } = columnsOf(customer.facts)
    people.set(customer, {
      ...{
        name: text(name) ?? '',
        reference: text(reference),
        phones: phonesOf({ phone: text(contact.phone), otherPhone: text(contact.otherPhone) }),
        emails: texts(contact.email),
      },
      places: sites.map((site) => placeOf(site)),
      ...{ sites, softeners: rest.filter((one) => one.kind === 'softener') },
    })
  }
  return people
}

function placeOf(site: DesiredEntity) {
  const { street, postcode, town } = columnsOf(site.facts)
  return { street: text(street), postcode: text(postcode), town: text(town) }
}

/** The one softener at a place, or the one of the same position or label. */
function softenerAt(wanted: DesiredEntity, all: readonly DesiredEntity[], there: CustomerOnRecord['sites'][number]): string | null {
  const [only] = there.softeners
  if (only && there.softeners.length === 1 && all.length === 1) return only.id
  const { location, label } = columnsOf(wanted.facts)
  const words = texts(location, label).map((one) => normaliseText(one))
  const alike = there.softeners.filter((one) => texts(one.location, one.label).some((word) => words.includes(normaliseText(word))))
  return alike.length === 1 ? (alike[0]?.id ?? null) : null
}

/**
 * Looks on record for the customers of a list that none of its keys found: one typed in by hand, or brought in by a list that had no customer numbers, or no phones.
 * Without this the same firm would stand there twice. Each on record is taken for one of the list at most.
 */
export async function findSame(
  tx: Tx,
  companyId: string,
  things: readonly DesiredEntity[],
  known: Found,
  display: Display,
): Promise<SameFound> {
  const result: SameFound = { customers: [], sites: [], softeners: [], notes: new Map(), mayBe: new Map() }
  const knownKeys = new Set(known.customers.map((one) => one.matchKey))
  const people = peopleOf(things, (key) => knownKeys.has(key))
  if (people.size === 0) return result
  const taken = new Set(known.customers.map((one) => one.id))
  const onRecord = (await readCustomersOnRecord(tx, companyId)).filter((one) => !taken.has(one.id))
  const onRecordBy = sharersOf<CustomerOnRecord & ListedPerson>()
  for (const [at, one] of onRecord.entries()) {
    await breathe(at)
    onRecordBy.add({ ...one, places: one.sites })
  }
  const ids = { customer: new Map<string, string>(), site: new Map<string, string>(), softener: new Map<string, string>() }
  let looked = 0
  for (const [customer, person] of people) {
    await breathe(looked++)
    const own = keyed(person)
    const alike = onRecordBy.find(own).flatMap((other) => {
      const found = taken.has(other.person.id) ? null : likeness(own, other)
      return found ? [{ one: other.person, ...found }] : []
    })
    const sure = alike.filter((one) => one.surely)
    const [first] = sure
    if (!first || sure.length > 1) {
      const may = first ?? alike[0]
      if (may) result.mayBe.set(customer.line, { name: person.name, reason: mayBeWords(may.one, formatList(may.by, display)) })
      continue
    }
    taken.add(first.one.id)
    ids.customer.set(first.one.id, customer.key)
    result.notes.set(customer.line, [`Matched to ${nameWords(first.one)} on record: the same ${formatList(first.by, display)}.`])
    for (const site of person.sites) {
      const keys = placeKeys(placeOf(site))
      const there = first.one.sites.find((one) => !ids.site.has(one.id) && placeKeys(one).some((key) => keys.includes(key)))
      if (!there) continue
      ids.site.set(there.id, site.key)
      const here = person.softeners.filter((one) => one.parents.site === site.key)
      for (const softener of here) {
        const id = softenerAt(softener, here, there)
        if (id && !ids.softener.has(id)) ids.softener.set(id, softener.key)
      }
    }
  }
  const under = <T extends { id: string; matchKey: string }>(rows: readonly T[], keys: Map<string, string>): T[] =>
    rows.map((row) => ({ ...row, matchKey: keys.get(row.id) ?? row.matchKey }))
  result.customers = under(await readPresentCustomers(tx, companyId, [...ids.customer.keys()], 'id'), ids.customer)
  result.sites = under(await readPresentSites(tx, companyId, [...ids.site.keys()], 'id'), ids.site)
  result.softeners = under(await readPresentSofteners(tx, companyId, [...ids.softener.keys()], 'id'), ids.softener)
  return result
}

const nameWords = ({ name, reference }: CustomerOnRecord) => (reference ? `${name} (no. ${reference})` : name)
const mayBeWords = (one: CustomerOnRecord, by: string) =>
  `May be ${nameWords(one)}, who is on record with the same ${by}. Brought in as another customer: look at both.`
