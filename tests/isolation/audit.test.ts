import { closeClients } from '@almanac/database/client'
import { readAudit } from '@almanac/database/read/audit-list'
import { changeCustomer } from '@almanac/operations/customers/change-customer'
import { changeSite } from '@almanac/operations/customers/change-site'
import { changeBedFacts } from '@almanac/operations/softeners/change-bed-facts'
import { changeSoftener } from '@almanac/operations/softeners/change-softener'
import { changeItem } from '@almanac/operations/stores/change-item'
import { auditFieldWord, auditTitle } from '@almanac/records/audit-words'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { NOW } from '../support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

let db: pg.Client
let mine: FirmRecords
let theirs: FirmRecords

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(NOW))
})
beforeEach(async () => {
  mine = await makeFirmRecords(db)
  theirs = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

const command = () => ({ commandId: newId(), version: 1 })
const read = (query: { siteId?: string; limit?: number; cursor?: string } = {}) =>
  readAudit(mine, { limit: 50, ...query }, (personId) => (personId === mine.personId ? 'Ruth Ames' : null))
const softener = () => ({
  ...command(),
  softenerId: mine.softenerId,
  label: 'Kitchen',
  location: '',
  arrangement: 'single' as const,
  notes: '',
})
const resin = { name: 'Resin 10 %', bagFt3: 1, resinKind: 'gel-10' as const, tubeOdIn: null, priceMinor: null, leadDays: 14 }
const site = { label: 'Orchard Lane 14', street: 'Orchard Lane 14', town: 'Larkmoor', region: '', postcode: '', notes: '' }

test('says who changed which fact, from what to what, newest first, and at which site', async () => {
  await changeSoftener(mine, { ...softener(), peopleServed: 4 })
  await changeBedFacts(mine, {
    ...command(),
    bedId: mine.bedId,
    tankVersion: 1,
    valveVersion: null,
    facts: { resinKind: 'gel-10' },
    source: 'call',
  })
  const { rows } = await read()
  expect(rows.slice(0, 2).map((row) => [auditTitle(row.operation, row.entity), row.who, row.site?.label])).toEqual([
    ['Bed facts changed', 'Ruth Ames', 'Orchard Lane 14'],
    ['Softener changed', 'Ruth Ames', 'Orchard Lane 14'],
  ])
  const { rows: bed } = await db.query('select resin_kind from bed where company_id = $1 and id = $2', [theirs.companyId, theirs.bedId])
  expect(rows[0]?.changes).toEqual([{ field: 'resinKind', known: true, from: bed[0].resin_kind, to: 'gel-10' }])
  expect(rows[1]?.changes).toContainEqual({ field: 'peopleServed', known: true, from: null, to: 4 })
  expect(auditFieldWord('peopleServed')).toBe('people served')
})

test('names a personal fact that changed, and neither its old nor its new value', async () => {
  await changeCustomer(mine, { ...command(), customerId: mine.customerId, name: 'Zebulon Quillfeather', reference: '4711', notes: '' })
  await changeSite(mine, { ...command(), siteId: mine.siteId, ...site, accessNotes: 'Zebulon has the key', waterSupplyId: null })
  const { rows } = await read()
  expect(rows[1]?.changes).toEqual([
    { field: 'name', known: false, from: null, to: null },
    { field: 'reference', known: false, from: null, to: null },
  ])
  expect(rows[0]?.changes).toEqual([
    { field: 'accessNotes', known: false, from: null, to: null },
    { field: 'waterSupplyId', known: true, from: mine.waterSupplyId, to: null },
  ])
  const { rows: trail } = await db.query('select detail::text from audit_entry where company_id = $1', [mine.companyId])
  for (const { detail } of trail) expect(detail).not.toMatch(/Zebulon|4711|Hanna/)
})

test('of one site: what was changed there, and nothing else of the firm', async () => {
  await changeItem(mine, { ...command(), ...resin, stockItemId: mine.stockItemId, leadDays: 21 })
  await changeSoftener(mine, { ...softener(), peopleServed: 4 })
  expect((await read()).rows.map((row) => row.entity)).toContain('stock-item')
  const { rows } = await read({ siteId: mine.siteId })
  expect(rows.map((row) => row.entity)).toEqual(['softener', 'site'])
  await expect(read({ siteId: theirs.siteId })).rejects.toMatchObject({ code: 'not-found' })
})

test('is read page by page, each line once', async () => {
  for (let leadDays = 1; leadDays <= 7; leadDays++)
    await changeItem(mine, { commandId: newId(), version: leadDays, ...resin, stockItemId: mine.stockItemId, leadDays: leadDays + 20 })
  const seen: string[] = []
  for (let cursor: string | undefined; ; ) {
    const page = await read({ limit: 3, cursor })
    seen.push(...page.rows.map((row) => row.id))
    if (!page.nextCursor) break
    cursor = page.nextCursor
  }
  expect(seen).toHaveLength(8)
  expect(new Set(seen).size).toBe(8)
  expect([...seen].sort().reverse()).toEqual(seen)
})
