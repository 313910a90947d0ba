import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

const CHUNK = 5000

async function inChunks<T>(keys: readonly string[], read: (chunk: string[]) => Promise<T[]>): Promise<T[]> {
  const found: T[] = []
  for (let start = 0; start < keys.length; start += CHUNK) found.push(...(await read(keys.slice(start, start + CHUNK))))
  return found
}

/** Row with its days as text, for comparing. */
function plainDays<R extends object>(row: R): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(row).map(([key, value]) => [key, value instanceof Date && key !== 'archivedAt' ? dayOf(value) : value]),
  )
}

const asPlain = <R extends { id: string; version: number }>(row: R) => ({ id: row.id, version: row.version, row: plainDays(row) })
export type PresentThing = ReturnType<typeof asPlain>

export type PresentCustomer = PresentThing & { matchKey: string; archived: boolean; batchId: string | null; contact: PresentThing | null }
export type PresentSite = PresentThing & { matchKey: string; archived: boolean; batchId: string | null; hasSupply: boolean }
export type PresentTank = PresentThing & { position: number; openBed: PresentThing | null; sources: Record<string, string> }
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
    first.set(contact.customerId, asPlain({ ...contact, ...asked }))
  }
  return found.map((one) => ({
    ...asPlain(one),
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
    ...asPlain(one),
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
  const testOf = new Map(tests.map((test) => [test.softenerId, asPlain(test)]))
  return found.map(({ tanks, ...one }) => ({
    ...asPlain(one),
    matchKey: one.matchKey ?? '',
    archived: one.archivedAt !== null,
    batchId: one.batchId,
    tanks: tanks.map(({ beds, ...tank }) => ({
      ...asPlain(tank),
      position: tank.position,
      openBed: beds[0] ? asPlain(beds[0]) : null,
      sources: tank.factSources as Record<string, string>,
    })),
    test: testOf.get(one.id) ?? null,
  }))
}
