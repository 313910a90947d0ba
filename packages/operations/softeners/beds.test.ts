import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readBedPage } from '@almanac/database/read/bed-page'
import { readSiteHistory } from '@almanac/database/read/site-history'
import { readSites } from '@almanac/database/read/sites-list'
import { readWeakestRecords } from '@almanac/database/read/weakest-records'
import { commandTools } from '@almanac/database/run-command'
import { TABLES } from '@almanac/database/tables'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { queryTerms } from '@almanac/service-rules/search/search-tokens'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { type EndAndBeginBed, endAndBeginBed } from '../shared/end-and-begin-bed.ts'
import { addPreTreatment } from './add-pre-treatment.ts'
import { addSoftener } from './add-softener.ts'
import { changeBedFacts } from './change-bed-facts.ts'
import { changeSoftener } from './change-softener.ts'
import { inspectBed } from './inspect-bed.ts'

let db: pg.Client
let mine: FirmRecords
let other: FirmRecords
const command = () => ({ commandId: newId() })
const seen = () => ({ bedId: mine.bedId, version: 1, tankVersion: 1, valveVersion: 1, source: 'call' as const })
const tasks = async () =>
  (await db.query(`select data from queue.job where name = 'forecast-beds' and data->>'companyId' = $1`, [mine.companyId])).rows.map(
    (row) => row.data.bedIds,
  )
const inspection = () => ({
  ...{ bedId: mine.bedId, day: '2026-11-30', beadCondition: 'some-soft' as const, capacityShare: 0.8, moistureShare: null },
  ...{ pressureDrop: { value: 1, unit: 'bar' as const }, notes: '', working: true },
})
const newSoftener = {
  ...{ label: '', location: '', arrangement: 'single' as const, tankSize: 'twin 14x65', resinKind: 'unknown' as const },
  ...{ volume: null, began: '', lastSeenDay: null, source: 'label' as const },
}

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

describe('the facts of a bed', () => {
  test('change with where each came from, keep what was typed, and ask for a forecast; what is left out stays', async () => {
    const facts = {
      tankSize: '12x52',
      began: '3/14/2018',
      gravel: { value: 10, unit: 'kg' as const },
      backwash: { value: 9, unit: 'L/min' as const },
    }
    await changeBedFacts(mine, { ...command(), ...seen(), facts })
    const page = await readBedPage(mine, mine.bedId)
    expect(page).toMatchObject({
      version: 2,
      tank: { diameterIn: 12, heightIn: 52, version: 2 },
      // Written the American way in a US firm.
      ...{ beganEarliest: '2018-03-14', beganLatest: '2018-03-14', volumeFt3: 1.5, resinKind: 'gel-8' },
      entered: { gravel: { value: 10, unit: 'kg' } },
      sources: { tankSize: 'said on a call, 2026-12-02', began: 'said on a call, 2026-12-02', gravelLb: 'said on a call, 2026-12-02' },
    })
    // 1 lb = 0.45359237 kg and 1 US gal = 3.785411784 L, both exact (NIST SP 811, Appendix B).
    expect(page.gravelLb).toBeCloseTo(10 / 0.45359237, 9)
    expect(page.valve?.backwashGpm).toBeCloseTo(9 / 3.785411784, 9)
    expect(await tasks()).toEqual([[mine.bedId]])
    expect((await readSites(mine, { terms: queryTerms('12x52'), limit: 5 })).rows.map((row) => row.id)).toEqual([mine.siteId])
  })

  test('changed by someone else meanwhile answer 409 with both values, for the tank as for the bed', async () => {
    await changeBedFacts(mine, { ...command(), ...seen(), facts: { began: '2016', tankSize: '9x48' } })
    await expect(changeBedFacts(mine, { ...command(), ...seen(), facts: { began: '2012' } })).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { currentVersion: 2, current: { began: '2016' }, sent: { began: '2012' } },
    })
    await expect(changeBedFacts(mine, { ...command(), ...seen(), version: 2, facts: { tankSize: '8x44' } })).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { current: { tankSize: '9x48' }, sent: { tankSize: '8x44' } },
    })
    expect(await readBedPage(mine, mine.bedId)).toMatchObject({ version: 2, beganAsWritten: '2016', tank: { sizeAsWritten: '9x48' } })
  })

  test.each([
    [{ began: 'long ago' }, /When the bed went in/],
    [{ tankSize: 'blue' }, /Tank size/],
    [{ lastSeenDay: '2027-01-01' }, /future/],
    [{ lastSeenDay: '2014-02-28' }, /cannot have been seen/],
  ])('that contradict or cannot be read are refused in a sentence: %o', async (facts, words) => {
    const before = await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])
    await expect(changeBedFacts(mine, { ...command(), ...seen(), facts })).rejects.toMatchObject({ code: 'invalid', message: words })
    expect(await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])).toEqual(before)
  })

  test('an inspection of a working bed moves the day it was last seen, never back', async () => {
    await inspectBed(mine, { ...command(), ...inspection() })
    await inspectBed(mine, { ...command(), ...inspection(), day: '2026-10-01' })
    const page = await readBedPage(mine, mine.bedId)
    expect(page.lastSeenDay).toBe('2026-11-30')
    expect(page.inspections.map((one) => one.day)).toEqual(['2026-11-30', '2026-10-01', '2025-06-01'])
    // 1 bar = 14.5038 psi (NIST SP 811, Appendix B: 1 psi = 6.894757 kPa).
    expect(page.inspections[0]?.pressureDropPsi).toBeCloseTo(100 / 6.894757, 4)
    // What was found counts in the forecast, whatever the day it was found on.
    expect(await tasks()).toEqual([[mine.bedId], [mine.bedId]])
  })
})

describe('softeners', () => {
  test('a twin is taken down as two tanks with a bed each, of which nothing more is known', async () => {
    const { bedIds } = await addSoftener(mine, { ...command(), siteId: mine.siteId, softener: newSoftener })
    expect(bedIds).toHaveLength(2)
    expect(await readBedPage(mine, bedIds[1] ?? '')).toMatchObject({
      tank: { position: 2, diameterIn: 14 },
      beganEarliest: null,
      resinKind: 'unknown',
    })
  })

  test('people served and carbon ahead move the forecast of that softener alone', async () => {
    const same = { softenerId: mine.softenerId, label: 'House', location: '', arrangement: 'single' as const, notes: '' }
    await changeSoftener(mine, { ...command(), ...same, version: 1, peopleServed: null })
    expect(await tasks()).toEqual([])
    await changeSoftener(mine, { ...command(), ...same, version: 2, peopleServed: 6 })
    await addPreTreatment(mine, { ...command(), softenerId: mine.softenerId, kind: 'carbon', fromDay: '2020-01-01', source: 'call' })
    expect(await tasks()).toEqual([[mine.bedId], [mine.bedId]])
  })
})

describe('the end of a bed and the beginning of the next', () => {
  const end = (): EndAndBeginBed => ({
    ...{ tankId: mine.tankId, endedEarliest: '2026-12-02', endedLatest: '2026-12-02', cause: 'worn', visitId: null },
    newBed: { resinKind: 'gel-10', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: 52.5, from: 'close-out 2026-12-02' },
  })
  const run = (input: EndAndBeginBed) => inCompany(mine, (tx) => endAndBeginBed(tx, commandTools(tx, mine, 'test', null), input))

  test('leaves the old bed as it was but for its end, and begins the new one on that day', async () => {
    const { endedBedId, newBedId } = await run(end())
    expect(endedBedId).toBe(mine.bedId)
    expect(await readBedPage(mine, mine.bedId)).toMatchObject({
      endedLatest: '2026-12-02',
      endCause: 'worn',
      beganEarliest: '2014-03-01',
      resinKind: 'gel-8',
    })
    expect(await readBedPage(mine, newBedId ?? '')).toMatchObject({
      ...{ beganEarliest: '2026-12-02', lastSeenDay: '2026-12-02', endedLatest: null, resinKind: 'gel-10' },
      sources: { volumeFt3: 'close-out 2026-12-02' },
      otherBeds: [{ id: mine.bedId }],
    })
    const { happenings } = await readSiteHistory(mine, mine.siteId, (at) => at.toISOString().slice(0, 10))
    const onThatDay = happenings.filter((one) => one.day === '2026-12-02' && one.type.startsWith('bed-')).map((one) => one.type)
    expect(onThatDay).toEqual(['bed-began', 'bed-ended'])
    expect(await tasks()).toEqual([[endedBedId, newBedId]])
  })

  test('of two at once for one tank the second ends the first one’s bed: never two in service', async () => {
    await Promise.all([run(end()), run(end())])
    const open = await inCompany(mine, (tx) =>
      tx.bed.count({ where: { companyId: mine.companyId, tankId: mine.tankId, endedLatest: null } }),
    )
    expect(open).toBe(1)
  })

  test('is refused before the bed began', async () => {
    await expect(run({ ...end(), endedEarliest: '2010-01-01', endedLatest: '2010-01-01' })).rejects.toMatchObject({ code: 'invalid' })
  })
})

test('what to ask next comes weakest first, page by page, with whom to ask', async () => {
  await inCompany(mine, (tx) =>
    tx.bedForecast.updateMany({ where: { companyId: mine.companyId }, data: { weakness: 3, questionKey: 'iron' } }),
  )
  const { rows, nextCursor } = await readWeakestRecords(mine, { limit: 10 })
  expect(rows).toMatchObject([
    { bedId: mine.bedId, question: 'iron', refusal: null, customerName: 'Hanna Vale', contacts: [{ phone: '555 0134', mayCall: null }] },
  ])
  expect(nextCursor).toBeNull()
})

test('an id of another company answers like one that does not exist, and changes nothing', async () => {
  type Ids = Pick<FirmRecords, 'bedId' | 'softenerId' | 'siteId'>
  const attempts = (them: Ids): (() => Promise<unknown>)[] => [
    () => readBedPage(mine, them.bedId),
    () => changeBedFacts(mine, { ...command(), ...seen(), bedId: them.bedId, facts: { began: '2016' } }),
    () => inspectBed(mine, { ...command(), ...inspection(), bedId: them.bedId }),
    () => addSoftener(mine, { ...command(), siteId: them.siteId, softener: newSoftener }),
    () => addPreTreatment(mine, { ...command(), softenerId: them.softenerId, kind: 'carbon', fromDay: null, source: 'call' }),
    () => readSiteHistory(mine, them.siteId, () => '2026-12-02'),
  ]
  const answers = async (them: Ids) => {
    const all: string[] = []
    for (const attempt of attempts(them)) {
      all.push(
        await attempt().then(
          () => 'allowed',
          (error: Error & { code?: string }) => `${error.code} ${error.message}`,
        ),
      )
    }
    return all
  }
  const before = await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])
  const foreign = await answers(other)
  expect(foreign).toEqual(await answers({ bedId: newId(), softenerId: newId(), siteId: newId() }))
  expect(foreign.every((one) => one.startsWith('not-found'))).toBe(true)
  expect(await fingerprint(db, TABLES.tenant, [mine.companyId, other.companyId])).toEqual(before)
  expect(await answers(mine)).toEqual(attempts(mine).map(() => 'allowed'))
})
