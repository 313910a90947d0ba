import { closeClients } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readSitePage } from '@almanac/database/read/site-page'
import { readSites } from '@almanac/database/read/sites-list'
import { TABLES } from '@almanac/database/tables'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { queryTerms } from '@almanac/service-rules/search/search-tokens'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { addContact } from './add-contact.ts'
import { addSite } from './add-site.ts'
import { archiveContact } from './archive-contact.ts'
import { changeHolder } from './change-holder.ts'
import { changeSite } from './change-site.ts'
import { setConsent } from './set-consent.ts'

let db: pg.Client
let mine: FirmRecords
let other: FirmRecords
const command = () => ({ commandId: newId() })
const find = async (q: string) => (await readSites(mine, { terms: queryTerms(q), limit: 50 })).rows.map((row) => row.label)
const tasks = async (name: string) =>
  (await db.query('select data from queue.job where name = $1 and data->>$2 = $3', [name, 'companyId', mine.companyId])).rows.map(
    (row) => row.data,
  )

const newcomer = { kind: 'new' as const, name: 'Jørgen Ashby', phone: '(555) 017-4410', email: '', consents: ['phone' as const] }
const softener = {
  ...{ label: '', location: 'cellar', arrangement: 'single' as const, tankSize: '10 x 54"', resinKind: 'gel-10' as const },
  ...{ volume: { value: 42, unit: 'L' as const }, began: 'before 2015', lastSeenDay: '2026-11-01', source: 'call' as const },
}
const place = { label: '', street: 'Millrace Lane 14', town: 'Larkmoor', region: '', postcode: '60511', accessNotes: '' }
const site = () => ({ ...place, waterSupplyId: mine.waterSupplyId, holder: newcomer, softener })
const change = () => ({
  ...{ siteId: mine.siteId, version: 1, label: 'Orchard Lane 14', street: '', town: 'Larkmoor', region: '', postcode: '' },
  ...{ accessNotes: 'key at number 12', notes: '', waterSupplyId: mine.waterSupplyId as string | null },
})

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  mine = await makeFirmRecords(db)
  other = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await db.end()
  await closeTaskQueue()
  await closeClients()
})

describe('adding a site', () => {
  test('takes down site, holder, consent, tank and bed at once, keeps what was typed, and asks for a forecast', async () => {
    const { siteId } = await addSite(mine, { ...command(), ...site() })
    const page = await readSitePage(mine, siteId)
    expect(page).toMatchObject({ label: 'Millrace Lane 14', tenures: [{ toDay: null, customer: { name: 'Jørgen Ashby' } }] })
    expect(page.contacts).toMatchObject([{ role: 'payer', consents: [{ channel: 'phone', granted: true, sinceDay: '2026-12-02' }] }])
    const [tank] = page.softeners[0]?.tanks ?? []
    expect(tank).toMatchObject({ diameterIn: 10, heightIn: 54, sizeAsWritten: '10 x 54"' })
    const [bed] = tank?.beds ?? []
    // 42 L is 1.483 ft³: 1 ft³ = 28.316846592 L exactly (0.3048 m to the third).
    expect(bed?.volumeFt3).toBeCloseTo(42 / 28.316846592, 9)
    expect(bed).toMatchObject({ resinKind: 'gel-10', beganAsWritten: 'before 2015', beganLatest: '2014-12-31', lastSeenDay: '2026-11-01' })
    expect(await tasks('forecast-beds')).toContainEqual({ companyId: mine.companyId, bedIds: [bed?.id], cause: 'edit' })
  })

  test('is found by any part of name, street, phone and tank at once, in any order', async () => {
    await addSite(mine, { ...command(), ...site() })
    for (const q of ['54 millr', 'race', 'jorgen', 'shby 10x54', '0174', '605', 'm 10x'])
      expect(await find(q), q).toEqual(['Millrace Lane 14'])
    expect(await find('millrace 12x52')).toEqual([])
    expect((await readSites(other, { terms: queryTerms('millrace'), limit: 50 })).rows).toEqual([])
  })

  test('sent again applies once; with another body it is refused', async () => {
    const body = { ...command(), ...site() }
    expect(await addSite(mine, body)).toEqual(await addSite(mine, body))
    expect(await find('millrace')).toHaveLength(1)
    await expect(addSite(mine, { ...body, town: 'Elsewhere' })).rejects.toMatchObject({ code: 'command-reused' })
  })

  test('a tank that cannot be read is told in a sentence and leaves nothing behind', async () => {
    const before = await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])
    const unreadable = { ...site(), softener: { ...softener, tankSize: 'the blue one' } }
    await expect(addSite(mine, { ...command(), ...unreadable })).rejects.toMatchObject({
      code: 'invalid',
      message: /Tank size: .* Nothing was saved/,
    })
    expect(await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])).toEqual(before)
  })
})

describe('changing a site', () => {
  test('another water supply forecasts its beds again; the same supply does not', async () => {
    await changeSite(mine, { ...command(), ...change() })
    expect(await tasks('forecast-beds')).toEqual([])
    await changeSite(mine, { ...command(), ...change(), version: 2, waterSupplyId: null })
    const [task] = await tasks('forecast-beds')
    expect(task.bedIds.sort()).toEqual([mine.bedId, mine.rebedBedId].sort())
  })

  test('a version that is not the present one answers 409 with both values', async () => {
    await changeSite(mine, { ...command(), ...change() })
    const late = changeSite(mine, { ...command(), ...change(), accessNotes: 'ring twice' })
    await expect(late).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { currentVersion: 2, current: { accessNotes: 'key at number 12' }, sent: { accessNotes: 'ring twice' } },
    })
  })
})

describe('a sold house', () => {
  const sold = (more: object = {}) => ({
    ...command(),
    siteId: mine.siteId,
    tenureVersion: 1,
    fromDay: '2026-12-01',
    holder: newcomer,
    ...more,
  })

  test('ends one tenure the day before the next begins, and puts the old contact of the site away', async () => {
    await changeHolder(mine, sold())
    const page = await readSitePage(mine, mine.siteId)
    expect(page.tenures.map(({ customer, fromDay, toDay }) => [customer.name, fromDay, toDay])).toEqual([
      ['Jørgen Ashby', '2026-12-01', null],
      ['Hanna Vale', '2015-02-01', '2026-11-30'],
    ])
    expect(page.contacts.map((one) => one.name)).toEqual(['Jørgen Ashby'])
    expect(await find('hanna')).toEqual([])
    expect(await find('jorgen')).toEqual(['Orchard Lane 14'])
  })

  test('is refused before the present holder began, and to who holds it already', async () => {
    await expect(changeHolder(mine, sold({ fromDay: '2015-01-01' }))).rejects.toMatchObject({ code: 'invalid' })
    await expect(changeHolder(mine, sold({ fromDay: '2026-12-03' }))).rejects.toThrow(/on that day/)
    const same = { kind: 'known' as const, customerId: mine.customerId }
    await expect(changeHolder(mine, sold({ holder: same }))).rejects.toMatchObject({ code: 'conflict' })
    expect((await readSitePage(mine, mine.siteId)).tenures).toHaveLength(1)
  })
})

describe('consent', () => {
  const answer = { channel: 'email' as const, granted: false, source: 'call' as const, sinceDay: '2026-12-02' }

  test('is replaced only by one who saw it; the trail keeps each answer', async () => {
    await setConsent(mine, { ...command(), contactId: mine.contactId, ...answer, version: 1 })
    await expect(setConsent(mine, { ...command(), contactId: mine.contactId, ...answer, granted: true, version: 1 })).rejects.toMatchObject(
      {
        code: 'version-conflict',
        detail: { current: { granted: false }, sent: { granted: true } },
      },
    )
    await inCompany(mine, async (tx) => {
      const consent = await tx.consent.findFirstOrThrow({ where: { companyId: mine.companyId, contactId: mine.contactId } })
      expect([consent.granted, dayOf(consent.sinceDay)]).toEqual([false, '2026-12-02'])
      expect(await tx.auditEntry.count({ where: { companyId: mine.companyId, entity: 'consent', entityId: consent.id } })).toBe(1)
    })
    expect(await tasks('raise-reminders')).toHaveLength(1)
  })
})

test('an id of another company answers like one that does not exist, and changes nothing', async () => {
  const contact = { role: 'payer' as const, name: 'X', phone: '', email: '' }
  const consent = { channel: 'text' as const, granted: true, source: 'call' as const, sinceDay: '2026-12-02', version: null }
  const attempts = (them: Pick<FirmRecords, 'siteId' | 'contactId' | 'customerId' | 'waterSupplyId'>): (() => Promise<unknown>)[] => [
    () => addSite(mine, { ...command(), ...site(), waterSupplyId: them.waterSupplyId }),
    () => addSite(mine, { ...command(), ...site(), holder: { kind: 'known', customerId: them.customerId } }),
    () => changeSite(mine, { ...command(), ...change(), siteId: them.siteId }),
    () => changeSite(mine, { ...command(), ...change(), waterSupplyId: them.waterSupplyId }),
    () => changeHolder(mine, { ...command(), siteId: them.siteId, tenureVersion: 1, fromDay: '2026-12-01', holder: newcomer }),
    () => addContact(mine, { ...command(), siteId: them.siteId, ...contact, onlyThisSite: false }),
    () => archiveContact(mine, { ...command(), contactId: them.contactId, version: 1 }),
    () => setConsent(mine, { ...command(), contactId: them.contactId, ...consent }),
    () => readSitePage(mine, them.siteId),
  ]
  const before = await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])
  const nowhere = { siteId: newId(), contactId: newId(), customerId: newId(), waterSupplyId: newId() }
  const messages = async (them: Parameters<typeof attempts>[0]) =>
    Promise.all(
      attempts(them).map((attempt) =>
        attempt().then(
          () => 'allowed',
          (error: Error & { code?: string }) => `${error.code} ${error.message}`,
        ),
      ),
    )
  const foreign = await messages(other)
  expect(foreign).toEqual(await messages(nowhere))
  expect(foreign.every((one) => one.startsWith('not-found'))).toBe(true)
  expect(await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])).toEqual(before)
  // The same calls with one's own ids are allowed.
  expect((await messages(mine)).filter((one) => one === 'allowed').length).toBeGreaterThan(5)
})
