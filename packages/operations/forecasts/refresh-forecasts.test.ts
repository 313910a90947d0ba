import { closeClients } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readDueMonths } from '@almanac/database/read/due-months'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { makeBed } from '../jobs/test-firm.ts'
import { explainBed } from './explain-bed.ts'
import { refreshBeds, refreshCompany } from './refresh-forecasts.ts'
import { sumMonths } from './sum-months.ts'

let db: pg.Client
let firm: FirmRecords

const EN = { locale: 'en-US' }
const all = () => refreshCompany({ companyId: firm.companyId, cause: 'nightly' })
const forecastOf = (bedId: string) => inCompany(firm, (tx) => tx.bedForecast.findFirst({ where: { companyId: firm.companyId, bedId } }))
const changeBed = (data: object) => inCompany(firm, (tx) => tx.bed.updateMany({ where: { id: firm.bedId }, data }))

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

describe('refreshing forecasts', () => {
  test('writes each bed’s days in order, its chances in order, the run with its day and what to ask', async () => {
    await all()
    for (const bedId of [firm.bedId, firm.rebedBedId]) {
      const row = await forecastOf(bedId)
      const days = [row?.due10Day, row?.due50Day, row?.due90Day].map((day) => dayOf(day ?? null) ?? '')
      expect(days).toEqual([...days].sort())
      const chances = [row?.chance3Months, row?.chance12Months, row?.chance24Months].map((one) => one ?? -1)
      expect(chances).toEqual([...chances].sort((a, b) => a - b))
      expect(chances.every((chance) => chance > 0 && chance < 1)).toBe(true)
      expect(row?.refusal).toBeNull()
    }
    const runs = await inCompany(firm, (tx) => tx.forecastRun.findMany({ where: { id: { not: firm.runId } } }))
    expect(runs).toMatchObject([{ cause: 'nightly', beds: 2, asOfDay: dateOf('2026-12-02') }])
    expect(runs[0]?.finishedAt).not.toBeNull()
  })

  test('the stored figures are those that the bed’s page explains', async () => {
    await all()
    const row = await forecastOf(firm.bedId)
    const why = await explainBed(firm, firm.bedId, EN)
    expect(why.ok && [why.value.due10Day, why.value.due50Day, why.value.due90Day]).toEqual([
      dayOf(row?.due10Day ?? null),
      dayOf(row?.due50Day ?? null),
      dayOf(row?.due90Day ?? null),
    ])
    await expect(explainBed(firm, newId(), EN)).rejects.toMatchObject({ code: 'not-found' })
  })

  test('a bed that came with a list a year ago, of unknown age and unseen since, may have failed by now', async () => {
    const { bedId } = await makeBed(firm)
    const failedBy = async () => {
      await refreshBeds({ companyId: firm.companyId, bedIds: [bedId], cause: 'edit' })
      return (await forecastOf(bedId))?.chanceAlreadyFailed ?? Number.NaN
    }
    const unlisted = await failedBy()
    const batch = { id: newId(), fileName: 'list.csv', state: 'applied', headerLine: 1, header: ['Name'], mapping: {}, totalRows: 1 }
    const days = { createdAt: dateOf('2025-12-02'), appliedAt: dateOf('2025-12-02') }
    await inCompany(firm, (tx) => tx.importBatch.create({ data: { companyId: firm.companyId, ...batch, ...days, createdBy: newId() } }))
    await inCompany(firm, (tx) => tx.bed.updateMany({ where: { id: bedId }, data: { batchId: batch.id } }))
    expect(await failedBy()).toBeGreaterThan(unlisted + 0.01)
  })

  test('a bed seen alive later is expected to fail later', async () => {
    await all()
    const before = await forecastOf(firm.bedId)
    await changeBed({ lastSeenDay: dateOf('2026-12-01') })
    await refreshBeds({ companyId: firm.companyId, bedIds: [firm.bedId], cause: 'edit' })
    const after = await forecastOf(firm.bedId)
    expect(Number(after?.due10Day)).toBeGreaterThan(Number(before?.due10Day))
    expect(after?.chanceAlreadyFailed ?? 1).toBeLessThan(before?.chanceAlreadyFailed ?? 0)
  })

  test('a bed of unknown beginning keeps the first day it was seen, and gets no younger when it is seen again', async () => {
    const began = async () => dayOf((await forecastOf(firm.bedId))?.beganMiddleDay ?? null)
    await changeBed({ beganEarliest: null, beganLatest: null, lastSeenDay: dateOf('2008-05-01') })
    await all()
    const before = await began()
    await changeBed({ lastSeenDay: dateOf('2026-12-01') })
    await all()
    expect(await began()).toBe(before)
    const bed = await inCompany(firm, (tx) => tx.bed.findFirst({ where: { id: firm.bedId } }))
    expect([bed?.firstSeenDay, bed?.lastSeenDay]).toEqual([dateOf('2008-05-01'), dateOf('2026-12-01')])
    await changeBed({ lastSeenDay: null })
    expect((await inCompany(firm, (tx) => tx.bed.findFirst({ where: { id: firm.bedId } })))?.firstSeenDay).toBeNull()
  })

  test('a bed looked at on eighty days has its forecast, and the others theirs', async () => {
    const data = Array.from({ length: 80 }, (_, i) => ({
      ...{ companyId: firm.companyId, id: newId(), bedId: firm.bedId, day: dateOf(`2026-0${1 + (i % 9)}-${10 + (i % 18)}`) },
      ...{ capacityShare: 0.9, source: 'measured' },
    }))
    await inCompany(firm, (tx) => tx.inspection.createMany({ data }))
    await all()
    expect(await forecastOf(firm.bedId)).toMatchObject({ refusal: null, due50Day: expect.any(Date) })
    expect(await forecastOf(firm.rebedBedId)).toMatchObject({ refusal: null, due50Day: expect.any(Date) })
  })

  test('a contradiction in the record gives the sentence that says so, and no days', async () => {
    await changeBed({ lastSeenDay: dateOf('2010-05-01') })
    await all()
    const row = await forecastOf(firm.bedId)
    expect(row).toMatchObject({ due10Day: null, due50Day: null, due90Day: null, chance12Months: null })
    expect(row?.refusal).toMatch(/^[A-Z].*\.$/s)
    expect((await forecastOf(firm.rebedBedId))?.refusal).toBeNull()
  })

  test('a bed that ended, or whose tank went to the workshop, has none any more; its history stays', async () => {
    await all()
    await changeBed({ endedEarliest: dateOf('2026-12-01'), endedLatest: dateOf('2026-12-01'), endCause: 'worn' })
    await inCompany(firm, (tx) => tx.tank.updateMany({ where: { id: firm.rebedTankId }, data: { softenerId: null } }))
    await refreshBeds({ companyId: firm.companyId, bedIds: [firm.bedId, firm.rebedBedId], cause: 'close-out' })
    expect([await forecastOf(firm.bedId), await forecastOf(firm.rebedBedId)]).toEqual([null, null])
    expect(await inCompany(firm, (tx) => tx.forecastChange.count({ where: { bedId: firm.bedId } }))).toBeGreaterThan(0)
  })

  test('ids of another firm’s beds change nothing there and make nothing here', async () => {
    const other = await makeFirmRecords(db)
    const tables = ['bed_forecast', 'forecast_change', 'forecast_run']
    const before = await fingerprint(db, tables, [other.companyId])
    await refreshBeds({ companyId: firm.companyId, bedIds: [other.bedId], cause: 'edit' })
    const after = await fingerprint(db, tables, [other.companyId])
    for (const table of tables) expect(after[`${table} ${other.companyId}`]).toBe(before[`${table} ${other.companyId}`])
    expect(await forecastOf(other.bedId)).toBeNull()
  })
})

describe('the month picture', () => {
  test('is 60 months and five years, whose mean is the sum of the beds’ chances, its band in order', async () => {
    await all()
    await sumMonths({ companyId: firm.companyId })
    const rows = await inCompany(firm, (tx) =>
      tx.forecastMonth.findMany({ where: { companyId: firm.companyId }, orderBy: { month: 'asc' } }),
    )
    expect(rows.filter((row) => row.months === 1)).toHaveLength(60)
    const [year] = rows.filter((row) => row.months === 12)
    const beds = [await forecastOf(firm.bedId), await forecastOf(firm.rebedBedId)]
    // A bed's own chance holds if it still works today; the picture leaves out those that have failed unnoticed by now.
    const expected = beds.reduce((sum, row) => sum + (row?.chance12Months ?? 0) * (1 - (row?.chanceAlreadyFailed ?? 0)), 0)
    expect(expected).toBeGreaterThan(0.1)
    // The year of the picture ends with a calendar month and a bed's twelve months with a day: they differ by less than one month's share.
    expect(Math.abs((year?.mean ?? Number.NaN) / expected - 1)).toBeLessThan(1 / 12)
    for (const row of rows) expect(row.low <= row.middle && row.middle <= row.high).toBe(true)
    expect(dayOf(rows[0]?.month ?? null)).toBe('2026-12-01')
  })

  test('told apart by supply, town or resin, the groups add up to the whole', async () => {
    await all()
    await sumMonths({ companyId: firm.companyId })
    const whole = await readDueMonths(firm, {}, 'UTC')
    for (const by of ['supply', 'area', 'resin'] as const) {
      const { groups } = await readDueMonths(firm, { by }, 'UTC')
      expect(groups.reduce((sum, group) => sum + group.beds, 0)).toBe(whole.beds)
      const mean = groups.reduce((sum, group) => sum + (group.years[0]?.mean ?? Number.NaN), 0)
      expect(Math.abs(mean - (whole.year?.mean ?? Number.NaN))).toBeLessThan(1e-3)
      // Two beds are too few for a picture of their own.
      expect(groups.map((group) => group.key)).toEqual([null])
    }
    expect(whole.groups).toEqual([])
  })

  test('knows a town however it is spelt, by the spelling of the most', async () => {
    // Twenty beds make a group of its own: twelve houses in Weirham, six in WEIRHAM, three in "weirham ".
    for (const [town, houses] of [
      ['Weirham', 12],
      ['WEIRHAM', 6],
      ['weirham ', 3],
    ] as const)
      for (let house = 0; house < houses; house++) {
        const { siteId } = await makeBed(firm, `${town} ${house}`)
        await inCompany(firm, (tx) => tx.site.updateMany({ where: { id: siteId }, data: { town } }))
      }
    await all()
    await sumMonths({ companyId: firm.companyId })
    const { groups } = await readDueMonths(firm, { by: 'area' }, 'UTC')
    expect(groups.map((group) => [group.key, group.beds])).toEqual([
      ['Weirham', 21],
      [null, 2],
    ])
  })

  test('of a firm without beds is empty, not wrong', async () => {
    await inCompany(firm, (tx) => tx.bedForecast.deleteMany({ where: { companyId: firm.companyId } }))
    await sumMonths({ companyId: firm.companyId })
    expect(await inCompany(firm, (tx) => tx.forecastMonth.count({ where: { companyId: firm.companyId } }))).toBe(0)
  })
})
