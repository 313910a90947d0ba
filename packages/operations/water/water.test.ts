import { closeClients } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { refreshCompany } from '../forecasts/refresh-forecasts.ts'
import { addPeriod } from './add-period.ts'
import { addSupply } from './add-supply.ts'
import { recordTest } from './record-test.ts'
import { withdrawPeriod } from './withdraw-period.ts'
import { withdrawTest } from './withdraw-test.ts'

let db: pg.Client
let firm: FirmRecords

const id = () => ({ commandId: newId() })
const mgL = (value: number) => ({ value, unit: 'mg/L' as const })
const TO_CHLORAMINE = { fromDay: '2018-01-01', disinfectant: 'chloramine', residual: mgL(3), source: "the town's notice" } as const
const change = (more: object = {}) => addPeriod(firm, { ...id(), waterSupplyId: firm.waterSupplyId, ...TO_CHLORAMINE, ...more })
const reading = (more: object) => recordTest(firm, { ...id(), siteId: firm.siteId, day: '2026-12-01', point: 'raw', ...more })
const tests = () => inCompany(firm, (tx) => tx.waterTest.findMany({ where: { id: { not: firm.testId } } }))
const taken = async (queue: string) => {
  const sql = `delete from queue.job where name = $1 and data->>'companyId' = $2 returning data`
  return (await db.query<{ data: TaskPayloads['forecast-company'] }>(sql, [queue, firm.companyId])).rows.map((row) => row.data)
}
/** Does what the worker would with the companies' and supplies' forecasts that were asked for. */
async function work(): Promise<void> {
  for (const payload of await taken('forecast-company')) await refreshCompany(payload)
}
async function dueDays() {
  const rows = await inCompany(firm, (tx) => tx.bedForecast.findMany())
  return Object.fromEntries(rows.map((row) => [row.bedId, { due10: dayOf(row.due10Day) ?? '', due50: dayOf(row.due50Day) ?? '' }]))
}

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(NOW))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a town that goes from chlorine to chloramine', () => {
  test('brings its beds’ due days forward, and each move is kept with what it came from', async () => {
    await refreshCompany({ companyId: firm.companyId, cause: 'nightly' })
    const before = await dueDays()
    await db.query('delete from forecast_change where company_id = $1', [firm.companyId])
    expect(await change()).toMatchObject({ bedsToForecast: 2 })
    await work()
    const after = await dueDays()
    const [was, is] = [before[firm.rebedBedId], after[firm.rebedBedId]]
    expect(is && was && is.due50 < was.due50 && is.due10 <= was.due10).toBe(true)
    const changes = await inCompany(firm, (tx) => tx.forecastChange.findMany({ where: { bedId: firm.rebedBedId } }))
    expect(changes.map((one) => [one.cause, dayOf(one.fromDue50), dayOf(one.toDue50)])).toEqual([['supply', was?.due50, is?.due50]])
  })

  test('moves a bed behind carbon less than one without: the carbon takes the disinfectant out first', async () => {
    await refreshCompany({ companyId: firm.companyId, cause: 'nightly' })
    const before = await dueDays()
    await change()
    await work()
    const after = await dueDays()
    const moved = (bedId: string) => Date.parse(before[bedId]?.due50 ?? '') - Date.parse(after[bedId]?.due50 ?? '')
    expect(moved(firm.bedId)).toBeLessThan(moved(firm.rebedBedId))
  })

  test('and back: a withdrawn entry is kept, and the forecasts are what they were', async () => {
    await refreshCompany({ companyId: firm.companyId, cause: 'nightly' })
    const before = await dueDays()
    const { periodId } = await change()
    await work()
    expect(await dueDays()).not.toEqual(before)
    await expect(withdrawPeriod(firm, { ...id(), id: periodId, version: 3 })).rejects.toMatchObject({ code: 'version-conflict' })
    expect(await withdrawPeriod(firm, { ...id(), id: periodId, version: 1 })).toMatchObject({ version: 2 })
    await work()
    expect(await dueDays()).toEqual(before)
    expect(await inCompany(firm, (tx) => tx.supplyPeriod.count({ where: { id: periodId } }))).toBe(1)
    await expect(withdrawPeriod(firm, { ...id(), id: periodId, version: 2 })).rejects.toMatchObject({ code: 'not-found' })
  })

  test('is written once for a day, and asks for the supply’s beds only', async () => {
    await change()
    expect(await taken('forecast-company')).toEqual([{ companyId: firm.companyId, waterSupplyId: firm.waterSupplyId, cause: 'supply' }])
    await expect(change()).rejects.toThrow('already has an entry that starts on that day')
    await expect(change({ fromDay: '2019-01-01', disinfectant: 'none' })).rejects.toThrow('You entered a residual but no disinfectant')
    await expect(change({ fromDay: '2019-01-01', residual: mgL(21) })).rejects.toThrow('21 mg/L can’t be right')
    expect(await taken('forecast-company')).toEqual([])
  })
})

describe('what a change leaves out', () => {
  const gpg = (value: number) => ({ value, unit: 'gpg' as const })
  const period = (periodId: string) => inCompany(firm, (tx) => tx.supplyPeriod.findFirstOrThrow({ where: { id: periodId } }))
  const bare = (more: object) =>
    addPeriod(firm, { ...id(), waterSupplyId: firm.waterSupplyId, fromDay: '2019-01-01', source: 'a letter', ...more })
  beforeEach(async () => {
    const first = {
      fromDay: '2018-01-01',
      disinfectant: 'free-chlorine',
      residual: mgL(0.8),
      hardness: gpg(17.5),
      iron: mgL(0.05),
    } as const
    const { periodId } = await bare({ ...first, source: 'yearly report' })
    await inCompany(firm, (tx) => tx.supplyPeriod.updateMany({ where: { id: periodId }, data: { temperatureC: 14 } }))
  })

  test('is as before: chloramine comes, and the hardness, the iron and the warmth of the water stay what they were', async () => {
    const { periodId } = await bare({ disinfectant: 'chloramine', residual: mgL(3) })
    expect(await period(periodId)).toMatchObject({
      ...{ disinfectant: 'chloramine', residualMgL: 3, hardnessGpg: 17.5, ironMgL: 0.05, temperatureC: 14 },
      entered: { residual: mgL(3), hardness: gpg(17.5), iron: mgL(0.05) },
      source: 'a letter; hardness, iron as before',
    })
  })

  test('is not known only where somebody says so', async () => {
    const { periodId } = await bare({ disinfectant: 'chloramine', hardness: null })
    expect(await period(periodId)).toMatchObject({ residualMgL: null, hardnessGpg: null, ironMgL: 0.05, entered: { iron: mgL(0.05) } })
  })

  test('of the disinfectant goes on with its residual; of another one the old residual says nothing', async () => {
    const harder = await bare({ hardness: gpg(23) })
    expect(await period(harder.periodId)).toMatchObject({ disinfectant: 'free-chlorine', residualMgL: 0.8, hardnessGpg: 23 })
    const other = await bare({ fromDay: '2020-01-01', disinfectant: 'chloramine' })
    expect(await period(other.periodId)).toMatchObject({ residualMgL: null, hardnessGpg: 23 })
  })

  test('comes from the entry in force on that day, not from a later or a withdrawn one', async () => {
    const later = await bare({ fromDay: '2022-01-01', hardness: gpg(30) })
    const between = await bare({ fromDay: '2021-01-01', iron: mgL(0.2) })
    expect(await period(between.periodId)).toMatchObject({ hardnessGpg: 17.5, ironMgL: 0.2 })
    await withdrawPeriod(firm, { ...id(), id: later.periodId, version: 1 })
    const after = await bare({ fromDay: '2023-01-01', residual: mgL(1) })
    expect(await period(after.periodId)).toMatchObject({ hardnessGpg: 17.5, residualMgL: 1 })
  })

  test('may not be everything', async () => {
    await expect(bare({})).rejects.toThrow('You entered no value, so nothing was saved.')
    await expect(bare({ disinfectant: 'none', residual: mgL(1) })).rejects.toThrow('You entered a residual but no disinfectant')
    await expect(bare({ fromDay: null, hardness: gpg(12), residual: mgL(1) })).resolves.toBeTruthy()
  })
})

test('a supply’s name is taken once', async () => {
  await addSupply(firm, { ...id(), name: 'Weir village', kind: 'town' })
  await expect(addSupply(firm, { ...id(), name: 'Weir village', kind: 'town' })).rejects.toMatchObject({ code: 'conflict' })
})

describe('a water test', () => {
  // 1 gpg = 64.79891 mg / 3.785411784 L = 17.118 mg/L, from the exact grain and US gallon (NIST Handbook 44, appendix C).
  test('keeps what was typed beside the canonical value, and has the site’s beds forecast again', async () => {
    await reading({ hardness: mgL(171.18), iron: { value: 500, unit: 'ug/L' }, ph: 7.4 })
    const [row] = await tests()
    expect(row).toMatchObject({
      ironMgL: 0.5,
      ph: 7.4,
      entered: { hardness: { value: 171.18, unit: 'mg/L' }, iron: { value: 500, unit: 'ug/L' } },
    })
    expect(row?.hardnessGpg).toBeCloseTo(10, 3)
    const [task] = (await taken('forecast-beds')) as unknown as TaskPayloads['forecast-beds'][]
    expect(task?.bedIds.sort()).toEqual([firm.bedId, firm.rebedBedId].sort())
  })

  test('an unusual value is kept with the reason of whoever insists on it', async () => {
    await reading({ hardness: { value: 99, unit: 'gpg' }, why: { hardness: 'measured twice, brackish well' } })
    const [row] = await tests()
    expect(row?.hardnessGpg).toBe(99)
    expect(row?.entered).toEqual({ hardness: { value: 99, unit: 'gpg', why: 'measured twice, brackish well' } })
    // An impossible one stays refused, whatever is said for it.
    await expect(reading({ hardness: { value: 999, unit: 'gpg' }, why: { hardness: 'measured twice' } })).rejects.toThrow('can’t be right')
  })

  test('for one softener asks for its bed only', async () => {
    await reading({ softenerId: firm.rebedSoftenerId, hardness: { value: 18, unit: 'gpg' } })
    expect(await taken('forecast-beds')).toMatchObject([{ bedIds: [firm.rebedBedId] }])
  })

  test.each([
    [{}, 'You entered no value'],
    [{ hardness: mgL(100), day: '2026-12-03' }, 'Dec 3, 2026 is in the future'],
    [{ freeChlorine: mgL(1.2), totalChlorine: mgL(1) }, 'Free chlorine (1.2 mg/L) can’t be more than total chlorine (1 mg/L)'],
    [{ hardness: { value: 250, unit: 'gpg' } }, 'A hardness of 250 gpg can’t be right'],
    [{ hardness: { value: 99, unit: 'gpg' } }, '99 gpg is unusual'],
    [{ ph: 15 }, 'A pH of 15 can’t be right'],
    [{ iron: mgL(-1) }, 'can’t be below zero'],
    [{ iron: mgL(150) }, 'An iron content of 150 mg/L can’t be right'],
  ])('%j is refused with what is wrong, and nothing is saved', async (more, sentence) => {
    await expect(reading(more)).rejects.toMatchObject({ code: 'invalid', message: expect.stringContaining(sentence) })
    expect(await tests()).toEqual([])
    expect(await taken('forecast-beds')).toEqual([])
  })

  test('today in the company’s zone is no future, though it is tomorrow in UTC', async () => {
    setClock(() => new Date('2026-12-02T23:30:00-07:00'))
    await expect(reading({ ph: 7, day: '2026-12-03' })).rejects.toThrow('is in the future')
    await expect(reading({ ph: 7, day: '2026-12-02' })).resolves.toBeTruthy()
    setClock(() => new Date(NOW))
  })

  test('at another site than the softener’s is refused', async () => {
    const elsewhere = newId()
    await inCompany(firm, (tx) => tx.site.create({ data: { companyId: firm.companyId, id: elsewhere, label: 'Weir Road 8' } }))
    const there = { siteId: elsewhere, softenerId: firm.softenerId, hardness: mgL(100) }
    await expect(reading(there)).rejects.toMatchObject({ code: 'not-found' })
  })

  test('withdrawn is kept, counts no more, and is withdrawn once', async () => {
    const { testId } = await reading({ hardness: mgL(200) })
    await taken('forecast-beds')
    await expect(withdrawTest(firm, { ...id(), id: testId, version: 2 })).rejects.toMatchObject({ code: 'version-conflict' })
    await withdrawTest(firm, { ...id(), id: testId, version: 1 })
    expect((await tests()).map((one) => one.withdrawnAt !== null)).toEqual([true])
    expect(await taken('forecast-beds')).toHaveLength(1)
    await expect(withdrawTest(firm, { ...id(), id: testId, version: 2 })).rejects.toMatchObject({ code: 'not-found' })
  })
})
