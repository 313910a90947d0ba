import { closeClients } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { applyImport } from './apply-import.ts'
import { queueImport } from './queue-import.ts'
import { batchOf, bringIn, type Firm, makeFirm, prepare, rowsOf, stateOf } from './test-import.ts'

let firm: Firm

const HEADER = 'Customer no,Name,Phone,E-mail,Street,Town,Zip,Tank,Installed,Last seen,Hardness (gpg),Water supply,Notes,OK to email?'
const ANNA = '17,Anna Böhm,555-010-4471,anna@example.com,14 Orchard Ln,Larkmoor,84001,10x54,2009,2024-05-03,18,Larkmoor town,rebed 2016,yes'
const MILL = '18,Mill Bakery,(555) 010 4472,,3 Mill Rd,Larkmoor,84001,twin 14x65,2015-06-02,,22,Larkmoor town,,no'
const file = (...rows: string[]) => [HEADER, ...rows].join('\n')

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('an import', () => {
  test('makes customer, contact, consent, site, softener, tanks, beds, water test and search words', async () => {
    const { done, batchId } = await bringIn(firm, file(ANNA, MILL))
    expect(done).toMatchObject({ created: 2, updated: 0, unchanged: 0, problem: 0, customers: 2, sites: 2, softeners: 2 })
    const state = await stateOf(firm)
    expect(state.customers.map((one) => [one.name, one.reference])).toEqual([
      ['Anna Böhm', '17'],
      ['Mill Bakery', '18'],
    ])
    expect(state.contacts.map((one) => [one.phone, one.email, one.consents.map((c) => [c.channel, c.granted])])).toEqual([
      ['555-010-4471', 'anna@example.com', [['email', true]]],
      ['(555) 010 4472', null, [['email', false]]],
    ])
    expect(state.tanks.map((tank) => [tank.position, tank.diameterIn, tank.heightIn])).toEqual([
      [1, 10, 54],
      [1, 14, 65],
      [2, 14, 65],
    ])
    // Anna's softener of 2009 was rebedded in 2016: an earlier bed that ended then, and the present one.
    const anna = state.beds.filter((bed) => bed.tankId === state.tanks[0]?.id)
    expect(anna.map((bed) => [dayOf(bed.beganEarliest), dayOf(bed.beganLatest), dayOf(bed.endedLatest), bed.endCause])).toEqual(
      expect.arrayContaining([
        ['2009-01-01', '2009-12-31', '2016-12-31', 'unknown'],
        ['2016-01-01', '2016-12-31', null, null],
      ]),
    )
    expect(anna.find((bed) => bed.endedLatest === null)).toMatchObject({ factSources: { began: 'import list.csv line 2' } })
    expect(dayOf(anna.find((bed) => bed.endedLatest === null)?.lastSeenDay ?? null)).toBe('2024-05-03')
    expect(state.tests.map((one) => [dayOf(one.day), one.hardnessGpg, one.entered])).toEqual([
      ['2024-05-03', 18, { hardness: { value: 18, unit: 'gpg' } }],
      ['2015-06-02', 22, { hardness: { value: 22, unit: 'gpg' } }],
    ])
    expect(state.supplies.map((one) => one.name)).toEqual(['Larkmoor town'])
    expect(new Set(state.sites.map((one) => one.waterSupplyId))).toEqual(new Set([state.supplies[0]?.id]))
    const words = state.tokens.map((one) => one.token)
    for (const word of ['bohm', 'orchard', '10x54', '0104471']) expect(words).toContain(word)
    const audit = await inCompany(firm, (tx) =>
      tx.auditEntry.findMany({ where: { entityId: batchId, operation: 'imports.apply: applied' } }),
    )
    expect(audit).toHaveLength(1)
    expect(JSON.stringify(audit)).not.toContain('Anna')
  })

  test('asks for the forecasts of its beds, in the same transaction', async () => {
    const { batchId } = await bringIn(firm, file(ANNA))
    const [task] = await inCompany(
      firm,
      (tx) =>
        tx.$queryRaw<
          { count: number }[]
        >`select count(*)::int as count from queue.job where name = 'forecast-company' and data->>'batchId' = ${batchId}`,
    )
    expect(task?.count).toBe(1)
  })

  test('of the same file twice changes nothing', async () => {
    await bringIn(firm, file(ANNA, MILL))
    const before = await stateOf(firm)
    const { done } = await bringIn(firm, file(ANNA, MILL))
    expect(done).toMatchObject({ created: 0, updated: 0, unchanged: 2, problem: 0 })
    expect(await stateOf(firm)).toEqual(before)
  })

  test('keeps coordinates, and the same file again changes nothing and blames nobody; moved ones are taken', async () => {
    const located = (row: string, at: string) => [`${HEADER},Latitude,Longitude`, `${row},${at}`].join('\n')
    await bringIn(firm, located(ANNA, '40.7608,-111.8910'))
    expect((await stateOf(firm)).sites[0]).toMatchObject({ latitude: 40.7608, longitude: -111.891 })
    const { done, batchId } = await bringIn(firm, located(ANNA, '40.7608,-111.8910'))
    expect(done).toMatchObject({ created: 0, updated: 0, unchanged: 1 })
    expect((await rowsOf(firm, batchId)).flatMap((row) => row.notes as string[])).not.toContainEqual(expect.stringContaining('coordinates'))
    await bringIn(firm, located(ANNA, '40.7,-111.9'))
    expect((await stateOf(firm)).sites[0]).toMatchObject({ latitude: 40.7, longitude: -111.9 })
  })

  test('of a file that names one customer twice with two sites makes one customer', async () => {
    const { done } = await bringIn(firm, file(ANNA, ANNA.replace('14 Orchard Ln', '9 Elm St')))
    expect(done).toMatchObject({ customers: 1, sites: 2, softeners: 2 })
  })

  test('updates what changed in the file, and leaves what was edited meanwhile, field by field', async () => {
    await bringIn(firm, file(ANNA))
    await inCompany(firm, (tx) =>
      tx.contact.updateMany({ where: { companyId: firm.companyId }, data: { phone: '555-999-0000', version: 2 } }),
    )
    const changed = ANNA.replace('555-010-4471', '555-010-8888')
      .replace('anna@example.com', 'a.boehm@example.com')
      .replace('2024-05-03', '2025-04-01')
    const { done, batchId } = await bringIn(firm, file(changed))
    expect(done).toMatchObject({ created: 0, updated: 1 })
    const state = await stateOf(firm)
    expect(state.contacts[0]).toMatchObject({ phone: '555-999-0000', email: 'a.boehm@example.com', version: 3 })
    expect(dayOf(state.beds.find((bed) => bed.endedLatest === null)?.lastSeenDay ?? null)).toBe('2025-04-01')
    const [row] = await rowsOf(firm, batchId)
    expect(row?.notes).toContainEqual('Kept your edit of the phone; the file says otherwise.')
  })

  test('keeps every further number as its own, found by each, and lets an edit of it stand', async () => {
    const two = ANNA.replace('555-010-4471', '555-010-4471 / 555-010-7788 / 555-010-6655')
    await bringIn(firm, file(two))
    const state = await stateOf(firm)
    expect(state.contacts).toMatchObject([{ phone: '555-010-4471', otherPhone: '555-010-7788; 555-010-6655' }])
    expect(state.tokens.map((one) => one.token)).toEqual(expect.arrayContaining(['5550107788', '5550106655']))
    const where = { companyId: firm.companyId }
    await inCompany(firm, (tx) => tx.contact.updateMany({ where, data: { otherPhone: '555-010-0000', version: 2 } }))
    const { batchId } = await bringIn(firm, file(two.replace('7788', '9999')))
    expect((await stateOf(firm)).contacts).toMatchObject([{ otherPhone: '555-010-0000' }])
    expect((await rowsOf(firm, batchId))[0]?.notes).toContainEqual('Kept your edit of the other phones; the file says otherwise.')
  })

  test('erases nothing with blank cells', async () => {
    await bringIn(firm, file(ANNA))
    const before = await stateOf(firm)
    await bringIn(firm, file('17,Anna Böhm,,,14 Orchard Ln,,84001,,,,,,,'))
    expect(await stateOf(firm)).toEqual(before)
  })

  test('ends the bed and begins another when the file tells of a later rebed', async () => {
    await bringIn(firm, file(ANNA))
    await bringIn(firm, file(ANNA.replace('rebed 2016', 'rebed 2016 and rebed 2025')))
    const { beds } = await stateOf(firm)
    expect(beds.map((bed) => [dayOf(bed.beganEarliest), dayOf(bed.endedLatest)]).sort()).toEqual([
      ['2009-01-01', '2016-12-31'],
      ['2016-01-01', '2025-12-31'],
      ['2025-01-01', null],
    ])
  })

  test('does not bring back what was removed by hand', async () => {
    await bringIn(firm, file(ANNA, MILL))
    const { companyId } = firm
    await inCompany(firm, (tx) =>
      tx.site.updateMany({ where: { companyId, street: '3 Mill Rd' }, data: { archivedAt: new Date(), version: 2 } }),
    )
    const { done } = await bringIn(firm, file(ANNA, MILL))
    expect(done).toMatchObject({ created: 0, unchanged: 2 })
  })
})

describe('an import that breaks off', () => {
  test('leaves nothing half-written, and its next try does all of it', async () => {
    const batchId = await prepare(firm, file(ANNA, MILL))
    const before = await stateOf(firm)
    const killed = applyImport({ companyId: firm.companyId, batchId }, async () => {
      throw new Error('the process was killed here')
    })
    await expect(killed).rejects.toThrow('killed')
    expect(await stateOf(firm)).toEqual(before)
    expect(before.customers).toEqual([])
    expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applying', failure: null })
    await applyImport({ companyId: firm.companyId, batchId })
    expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applied', doneRows: 2, failure: null })
    expect((await stateOf(firm)).customers).toHaveLength(2)
  })

  test('and is then delivered twice applies once', async () => {
    const batchId = await prepare(firm, file(ANNA))
    await applyImport({ companyId: firm.companyId, batchId })
    const before = await stateOf(firm)
    await applyImport({ companyId: firm.companyId, batchId })
    expect(await stateOf(firm)).toEqual(before)
  })
})

describe('a batch of another firm', () => {
  test('is not found, and nothing changes', async () => {
    const batchId = await prepare(firm, file(ANNA))
    const other = await makeFirm()
    await expect(queueImport(other, { commandId: newId(), batchId, version: 2 })).rejects.toMatchObject({ code: 'not-found' })
    await expect(applyImport({ companyId: other.companyId, batchId })).rejects.toMatchObject({ code: 'not-found' })
    expect(await batchOf(firm, batchId)).toMatchObject({ state: 'queued' })
    expect((await stateOf(other)).customers).toEqual([])
  })
})

// More than are indexed at one time.
describe('six hundred rows', () => {
  test('are written with progress, and twice changes none', { timeout: 300_000 }, async () => {
    const rows = Array.from(
      { length: 600 },
      (_, index) =>
        `${index},Family ${index},555-02${String(index).padStart(5, '0')},,${index} Long St,Larkmoor,84001,10x54,20${String(5 + (index % 18)).padStart(2, '0')},2024-01-0${1 + (index % 9)},${10 + (index % 20)},Larkmoor town,,yes`,
    )
    const { done, batch } = await bringIn(firm, file(...rows))
    expect(done).toMatchObject({ created: 600, problem: 0 })
    expect(batch.doneRows).toBe(600)
    expect((await bringIn(firm, file(...rows))).done).toMatchObject({ unchanged: 600, created: 0, updated: 0 })
  })
})
