import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readMergings } from '@almanac/database/read/mergings'
import { readSitePage } from '@almanac/database/read/site-page'
import { readSites } from '@almanac/database/read/sites-list'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { queryTerms } from '@almanac/service-rules/search/search-tokens'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bringIn, type Firm, makeFirm, stateOf } from '../imports/test-import.ts'
import { eraseCustomer } from '../keeping/erase-customer.ts'
import { mergeCustomers, mergeSites } from './merge-records.ts'
import { mergeTowns } from './merge-towns.ts'
import { previewUndo } from './preview-undo.ts'
import { undoMerging } from './undo-merging.ts'

/** The same house twice: first without the customer's number and with a slip in the name, then with it. And one more in a town spelt in another way. */
const FIRST = 'Name,Phone,Street,Town,Tank\nAnn Poe,555-201-3344,1 Elm St,Lark,10x54\nBo Dow,555-201-9999,2 Elm St,LARK,9x48\n'
const SECOND = 'No,Name,Phone,Street,Town,Tank\n17,Anne Poe-Hall,555-201-3344,1 Elm Street,Lark,12x52\n'

let firm: Firm
const command = () => ({ commandId: newId() })
const find = async (q: string) => (await readSites(firm, { terms: queryTerms(q), limit: 9 })).rows.map((row) => row.label)
const mergings = async () => (await readMergings(firm, { limit: 9 })).rows

/** Everything but versions, instants and what is on record of mergings and commands. */
async function standing() {
  const { customers, contacts, sites, tenures, softeners, beds, tokens } = await stateOf(firm)
  const plain = (rows: object[]) => JSON.parse(JSON.stringify(rows, (key, value) => (key === 'version' ? undefined : value)))
  return { customers: plain(customers), contacts: plain(contacts), sites: plain(sites), tenures, softeners: plain(softeners), beds, tokens }
}
const twins = async () => {
  const { customers, sites, tenures } = await stateOf(firm)
  const named = (name: string) => customers.find((one) => one.name === name)?.id ?? expect.unreachable()
  const [ann, anne] = [named('Ann Poe'), named('Anne Poe-Hall')]
  const siteOf = (id: string) => sites.find((site) => tenures.some((one) => one.siteId === site.id && one.customerId === id))?.id ?? ''
  return { ann, anne, site: siteOf(ann), twin: siteOf(anne) }
}

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  await bringIn(firm, FIRST, 'first.csv')
  await bringIn(firm, SECOND, 'second.csv')
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

test('two customers and their two sites become one of each, and two again when it is undone, as they were', async () => {
  const { ann, anne, site, twin } = await twins()
  const before = await standing()
  await mergeCustomers(firm, { ...command(), keptId: ann, goneId: anne })
  await mergeSites(firm, { ...command(), keptId: site, goneId: twin })
  const page = await readSitePage(firm, site)
  expect(page.softeners.map((one) => one.tanks[0]?.diameterIn).sort()).toEqual([10, 12])
  expect([page.tenures.length, page.contacts.length]).toEqual([1, 2])
  expect(await find('elm')).toEqual(['1 Elm St', '2 Elm St'])
  expect(await find('12x52')).toEqual(['1 Elm St'])
  expect(await mergings()).toMatchObject([
    { kind: 'site', gone: '1 Elm Street, Lark', kept: '1 Elm St, Lark', undone: false },
    { kind: 'customer', gone: 'Anne Poe-Hall (no. 17)', kept: 'Ann Poe' },
  ])
  // Either list again finds what it spoke of, makes nothing, and takes no name back; what it says of a softener that moved is still taken.
  for (const [list, updated] of [
    [FIRST, 0],
    [SECOND, 0],
    [SECOND.replace('12x52', '13x54'), 1],
    [SECOND, 1],
  ] as const)
    expect((await bringIn(firm, list)).done).toMatchObject({ created: 0, updated, customers: 0, sites: 0, softeners: 0, problem: 0 })
  expect((await readSitePage(firm, site)).tenures[0]?.customer.name).toBe('Ann Poe')

  for (const { id, version } of await mergings()) await undoMerging(firm, { ...command(), mergingId: id, version })
  expect(await standing()).toEqual(before)
  const [last] = await mergings()
  await expect(undoMerging(firm, { ...command(), mergingId: last?.id ?? '', version: last?.version ?? 0 })).rejects.toThrow(
    /undone already/,
  )
})

test('of what came after, nothing is parted from the one that was kept; and what was kept in its turn is merged no further by an undo', async () => {
  const { ann, anne } = await twins()
  const bo = (await stateOf(firm)).customers.find((one) => one.name === 'Bo Dow')?.id ?? ''
  await mergeCustomers(firm, { ...command(), keptId: ann, goneId: anne })
  const contactId = newId()
  await inCompany(firm, (tx) =>
    tx.contact.create({ data: { companyId: firm.companyId, id: contactId, customerId: ann, role: 'key-holder', name: 'Next door' } }),
  )
  const [first] = await mergings()
  // Told before it is undone: the site, contact and line of the one that went go back; the neighbor came later and stays; one contact is nobody's of theirs any more.
  const before = await previewUndo(firm, first?.id ?? '')
  expect(before.refused).toBeNull()
  expect(before.back).toContainEqual({ kind: 'tenure', count: 1, names: ['1 Elm Street'] })
  expect(before.back.map((one) => one.kind)).toEqual(['tenure', 'contact', 'import_row'])
  expect(before.stays).toEqual([{ kind: 'contact', count: 1, names: ['Next door'] }])
  expect(before.elsewhere).toEqual([])
  await mergeCustomers(firm, { ...command(), keptId: bo, goneId: ann })
  expect((await previewUndo(firm, first?.id ?? '')).refused).toMatch(/merged itself/)
  await expect(undoMerging(firm, { ...command(), mergingId: first?.id ?? '', version: 1 })).rejects.toThrow(/merged itself/)
  const [second] = await mergings()
  await undoMerging(firm, { ...command(), mergingId: second?.id ?? '', version: 1 })
  await undoMerging(firm, { ...command(), mergingId: first?.id ?? '', version: 1 })
  const { contacts } = await stateOf(firm)
  expect(contacts.find((one) => one.id === contactId)?.customerId).toBe(ann)
  expect(contacts.filter((one) => one.customerId === anne)).toHaveLength(1)
  await expect(mergeCustomers(firm, { ...command(), keptId: ann, goneId: ann })).rejects.toThrow(/one and the same/)
})

test('a town that is spelt in two ways becomes one on every site, and two again', async () => {
  const towns = async () => (await stateOf(firm)).sites.map((one) => one.town)
  const before = await towns()
  await mergeTowns(firm, { ...command(), from: 'LARK', to: 'Lark' })
  expect(new Set(await towns())).toEqual(new Set(['Lark']))
  const [merging] = await mergings()
  expect(merging).toMatchObject({ kind: 'town', gone: 'LARK', kept: 'Lark' })
  await bringIn(firm, 'Name,Phone,Street,Town,Tank\nCy Orr,555-201-1111,9 Elm St,Lark,9x48\n', 'third.csv')
  expect(await previewUndo(firm, merging?.id ?? '')).toMatchObject({
    refused: null,
    back: [{ kind: 'site', count: 1, names: ['2 Elm St'] }],
    stays: [{ kind: 'site', count: 1, names: ['9 Elm St'] }],
    elsewhere: [],
  })
  await undoMerging(firm, { ...command(), mergingId: merging?.id ?? '', version: 1 })
  expect((await towns()).slice(0, before.length)).toEqual(before)
})

test('a customer who is erased takes along the name under which they were on record twice, and the merging is undone no more', async () => {
  const { ann, anne } = await twins()
  await mergeCustomers(firm, { ...command(), keptId: ann, goneId: anne })
  await eraseCustomer(firm, { ...command(), customerId: ann, version: 1 })
  const { customers, contacts } = await stateOf(firm)
  expect(customers.filter((one) => /Poe/.test(one.name))).toEqual([])
  expect(contacts.filter((one) => one.phone?.endsWith('3344'))).toEqual([])
  expect(await mergings()).toMatchObject([{ gone: null, kept: null }])
  await expect(undoMerging(firm, { ...command(), mergingId: (await mergings())[0]?.id ?? '', version: 1 })).rejects.toThrow(/erased since/)
})
