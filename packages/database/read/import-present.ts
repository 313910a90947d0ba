import { factColumns, type ImportKind } from '@almanac/records/import-facts'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

const CHUNK = 5000

async function inChunks<T>(keys: readonly string[], read: (chunk: string[]) => Promise<T[]>): Promise<T[]> {
  const found: T[] = []
  for (let start = 0; start < keys.length; start += CHUNK) found.push(...(await read(keys.slice(start, start + CHUNK))))
  return found
}

/** What an import compares of a thing: the columns of its facts and no others, days as text. */
export type PresentThing = {
  id: string
  version: number
  row: Record<string, unknown>
  /** Found in the place of another that was merged into it. */
  isMerged?: boolean
}

function asPlain(kind: ImportKind, row: { id: string; version: number } & Record<string, unknown>): PresentThing {
  const columns = Object.values(factColumns[kind]).flat()
  const facts = columns.map((column) => [column, row[column] instanceof Date ? dayOf(row[column]) : row[column]])
  return { id: row.id, version: row.version, row: Object.fromEntries(facts) }
}

type Sources = Record<string, string>

export type PresentCustomer = PresentThing & { matchKey: string; archived: boolean; batchId: string | null; contact: PresentThing | null }
export type PresentSite = PresentThing & { matchKey: string; archived: boolean; batchId: string | null; hasSupply: boolean }
export type PresentTank = PresentThing & { position: number; openBed: (PresentThing & { sources: Sources }) | null; sources: Sources }
export type PresentSoftener = PresentThing & {
  matchKey: string
  archived: boolean
  batchId: string | null
  tanks: PresentTank[]
  test: PresentThing | null
}

/** What the values asked for are: match keys of an import, or ids. */
type FoundBy = 'matchKey' | 'id'

const CONSENT_COLUMN: Record<string, string> = {
  email: 'consentEmail',
  phone: 'consentPhone',
  text: 'consentText',
  letter: 'consentLetter',
}

/** Customers that carry one of these match keys, removed ones too, each with the contact its import made. */
export async function readPresentCustomers(
  tx: Tx,
  companyId: string,
  keys: readonly string[],
  by: FoundBy = 'matchKey',
): Promise<PresentCustomer[]> {
  const found = await inChunks(keys, (chunk) => tx.customer.findMany({ where: { companyId, [by]: { in: chunk } } }))
  const contacts = await inChunks(
    found.map((one) => one.id),
    (chunk) =>
      tx.contact.findMany({
        where: { companyId, customerId: { in: chunk }, archivedAt: null, siteId: null },
        include: { consents: { select: { channel: true, granted: true } } },
        orderBy: { id: 'asc' },
      }),
  )
  const first = new Map<string, PresentThing>()
  for (const { consents, ...contact } of contacts) {
    if (first.has(contact.customerId)) continue
    const asked = Object.fromEntries(consents.map((one) => [CONSENT_COLUMN[one.channel] ?? one.channel, one.granted]))
    first.set(contact.customerId, asPlain('contact', { ...contact, ...asked }))
  }
  return found.map((one) => ({
    ...asPlain('customer', one),
    matchKey: one.matchKey ?? '',
    archived: one.archivedAt !== null,
    batchId: one.batchId,
    contact: first.get(one.id) ?? null,
  }))
}

/** Sites that carry one of these match keys, removed ones too. */
export async function readPresentSites(
  tx: Tx,
  companyId: string,
  keys: readonly string[],
  by: FoundBy = 'matchKey',
): Promise<PresentSite[]> {
  const found = await inChunks(keys, (chunk) => tx.site.findMany({ where: { companyId, [by]: { in: chunk } } }))
  return found.map((one) => ({
    ...asPlain('site', one),
    matchKey: one.matchKey ?? '',
    archived: one.archivedAt !== null,
    batchId: one.batchId,
    hasSupply: one.waterSupplyId !== null,
  }))
}

/** Softeners that carry one of these match keys, with tanks, open beds, and the water test an import took down. */
export async function readPresentSofteners(
  tx: Tx,
  companyId: string,
  keys: readonly string[],
  by: FoundBy = 'matchKey',
): Promise<PresentSoftener[]> {
  const found = await inChunks(keys, (chunk) =>
    tx.softener.findMany({
      where: { companyId, [by]: { in: chunk } },
      include: { tanks: { where: { archivedAt: null }, include: { beds: { where: { archivedAt: null, endedLatest: null } } } } },
    }),
  )
  const tests = await inChunks(
    found.map((one) => one.id),
    (chunk) =>
      tx.waterTest.findMany({
        where: { companyId, softenerId: { in: chunk }, batchId: { not: null }, withdrawnAt: null },
        orderBy: { id: 'asc' },
      }),
  )
  const testOf = new Map(tests.map((test) => [test.softenerId, asPlain('test', test)]))
  return found.map(({ tanks, ...one }) => ({
    ...asPlain('softener', one),
    matchKey: one.matchKey ?? '',
    archived: one.archivedAt !== null,
    batchId: one.batchId,
    tanks: tanks.map(({ beds, ...tank }) => ({
      ...asPlain('tank', tank),
      position: tank.position,
      openBed: beds[0] ? { ...asPlain('bed', beds[0]), sources: beds[0].factSources as Sources } : null,
      sources: tank.factSources as Sources,
    })),
    test: testOf.get(one.id) ?? null,
  }))
}
