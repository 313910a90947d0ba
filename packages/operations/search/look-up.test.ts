import { closeClients } from '@almanac/database/client'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { addSite } from '../customers/add-site.ts'
import { archiveContact } from '../customers/archive-contact.ts'
import { proposeJob } from '../jobs/propose-job.ts'
import { changeSoftener } from '../softeners/change-softener.ts'
import { lookUp } from './look-up.ts'

let db: pg.Client
let mine: FirmRecords
let other: FirmRecords
const ids: Record<string, string> = {}
const command = () => ({ commandId: newId() })
const softener = {
  ...{ label: '', location: '', arrangement: 'single' as const, resinKind: 'gel-8' as const, volume: null, began: '', lastSeenDay: null },
  source: 'call' as const,
}

/** A house in a company, by the form that a dispatcher fills in. */
async function house(firm: FirmRecords, street: string, name: string, phone: string, tankSize: string, label = ''): Promise<string> {
  const holder = { kind: 'new' as const, name, phone, email: '', consents: [] }
  const place = { label, street, town: 'Fordham Mill', region: '', postcode: '60511', accessNotes: '', waterSupplyId: null }
  return (await addSite(firm, { ...command(), ...place, holder, softener: { ...softener, tankSize } })).siteId
}

/** "person Hester Vance", "address Sluice Road 58", … as an answer shows them. */
async function answers(query: string, firm = mine): Promise<string[]> {
  const { findings, near } = await lookUp(firm, query)
  return findings.map((one) => {
    const what = one.of === 'person' ? one.name : one.of === 'job' ? `${one.job.kind} ${one.siteLabel}` : one.siteLabel
    return `${near ? 'near ' : ''}${one.of} ${what}`
  })
}

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
  mine = await makeFirmRecords(db)
  other = await makeFirmRecords(db)
  ids.sluice = await house(mine, 'Sluice Road 58', 'Hester Vance', '(555) 012-7746', '12x52')
  ids.brook = await house(mine, 'Brook Street 75', 'Fergus Moreau', '+1 555 016 7938', '10x54')
  await house(other, 'Sluice Road 59', 'Hester Vantage', '(555) 012-7747', '12x52')
  await proposeJob(mine, { ...command(), siteId: ids.brook ?? '', kind: 'repair' })
})
afterAll(async () => {
  setClock()
  await db.end()
  await closeTaskQueue()
  await closeClients()
})

describe('what was typed right', () => {
  test.each([
    ['hester', 'person Hester Vance'],
    ['VANCE sluice', 'person Hester Vance'],
    ['sluice', 'address Sluice Road 58'],
    ['58 sluice rd', 'address Sluice Road 58'],
    ['12x52', 'tank Sluice Road 58'],
    ['12 x 52', 'tank Sluice Road 58'],
    ['555 01 27 746', 'person Hester Vance'],
    ['5550127746', 'person Hester Vance'],
    ['+1 (555) 012-7746', 'person Hester Vance'],
    ['1 555 012 7746', 'person Hester Vance'],
    ['(555) 016-7938', 'person Fergus Moreau'],
    ['repair brook', 'job repair Brook Street 75'],
    ['repair', 'job repair Brook Street 75'],
  ])('%j finds %s first', async (query, first) => expect((await answers(query))[0]).toBe(first))

  test('an address brings its open jobs along', async () => {
    expect(await answers('brook')).toEqual(['address Brook Street 75', 'job repair Brook Street 75'])
  })
})

describe('one slip a word', () => {
  test.each([
    ['hesetr', 'near person Hester Vance'],
    ['vnace', 'near person Hester Vance'],
    ['sliuce', 'near address Sluice Road 58'],
    ['aluice raod', 'near address Sluice Road 58'],
    ['moreu', 'near person Fergus Moreau'],
    ['fergsu brokk', 'near person Fergus Moreau'],
    ['555 016 7983', 'near person Fergus Moreau'],
    // Other words of it have neighbours too, but they are known: the slip is where nothing begins so.
    ['Sluice Road 58 Fordham Mill Hester Vnace', 'near person Hester Vance'],
  ])('%j finds %s', async (query, first) => expect((await answers(query))[0]).toBe(first))

  test.each(['12x53', 'sluice 85', 'qqqqqq', 'mroaeu', '!!', '%', '"', "'"])('%j finds nothing', async (query) =>
    expect(await answers(query)).toEqual([]),
  )
})

test('a site that goes by a name of its own says by which street it was met; one that goes by its street does not say it twice', async () => {
  await house(mine, '33 Chapel Row', 'Corben Brewery', '(555) 013-1133', '14x65', 'Corben brewery')
  const streets = async (query: string) =>
    (await lookUp(mine, query)).findings.flatMap((one) => (one.of === 'person' || one.of === 'address' ? [one.street] : []))
  expect(await streets('chapel row')).toEqual(['33 Chapel Row'])
  expect(await streets('chpael')).toEqual(['33 Chapel Row'])
  expect(await streets('sluice 58')).toEqual([null])
})

describe('what must not be found', () => {
  test('another firm’s, typed right or with a slip', async () => {
    for (const query of ['vantage', 'vantaeg', 'sluice 59', '5550127747']) {
      expect((await answers(query)).filter((one) => /Vantage|59/.test(one))).toEqual([])
      expect((await answers(query, other))[0]).toMatch(/Vantage|59/)
    }
  })

  test('a contact that was archived, and the number with it', async () => {
    const siteId = await house(mine, 'Weir Lane 3', 'Otto Redfern', '(555) 018-6140', '9x48')
    expect(await answers('5550186140')).toEqual(['person Otto Redfern'])
    const { rows } = await db.query<{ id: string }>(
      'select k.id from contact k join tenure t on t.customer_id = k.customer_id where t.site_id = $1',
      [siteId],
    )
    await archiveContact(mine, { ...command(), contactId: rows[0]?.id ?? '', version: 1 })
    expect(await answers('5550186140')).toEqual([])
    expect(await answers('otto')).toEqual(['person Otto Redfern'])
  })

  test('a site that was archived, even while its words are still on record', async () => {
    const siteId = await house(mine, 'Quarry Street 174', 'Ida Kemble', '(555) 014-0962', '9x48')
    expect(await answers('kemble')).toEqual(['person Ida Kemble'])
    await db.query('update site set archived_at = now() where id = $1', [siteId])
    expect(await answers('kemble')).toEqual([])
  })
})

test('a model is found by the softener’s label and by its valve’s card, and the new one after a change', async () => {
  const siteId = await house(mine, 'Willow Bend 7', 'Selma Drury', '(555) 017-3351', '10x54')
  const { rows } = await db.query<{ id: string }>('select id from softener where site_id = $1', [siteId])
  const facts = { location: '', arrangement: 'single' as const, peopleServed: null, notes: '' }
  const change = (version: number, label: string, valveCardId: string | null) =>
    changeSoftener(mine, { ...command(), softenerId: rows[0]?.id ?? '', version, label, valveCardId, ...facts })
  await change(1, 'Softener Alder 900', 'usual-meter')
  expect(await answers('alder 900')).toEqual(['tank Willow Bend 7'])
  expect(await answers('metered')).toEqual(['tank Willow Bend 7'])
  await change(2, 'Softener Birch 700', null)
  expect(await answers('alder')).toEqual([])
  expect(await answers('metered')).toEqual([])
  expect(await answers('birch')).toEqual(['tank Willow Bend 7'])
})
