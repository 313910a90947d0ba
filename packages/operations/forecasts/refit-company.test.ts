import { closeClients } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { PARAMETER_KEYS } from '@almanac/forecast/priors/forecast-parameters'
import { TRADE_PRIORS } from '@almanac/forecast/priors/trade-priors'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { addManyBeds } from '../../../tests/support/many-beds.ts'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { readCompanyRecords } from './company-records.ts'
import { openCompanyRun } from './company-run.ts'
import { parametersOf } from './parameters.ts'
import { refitCompany, refreshBeds } from './refresh-forecasts.ts'

let db: pg.Client
let firm: FirmRecords

const refit = (companyId = firm.companyId) => refitCompany({ companyId, cause: 'nightly' })
const fits = (companyId = firm.companyId) =>
  inCompany({ companyId }, (tx) =>
    tx.forecastFit.findMany({ where: { companyId, version: { not: 'fit-1' } }, orderBy: { finishedAt: 'asc' } }),
  )
const parameters = (companyId = firm.companyId) => inCompany({ companyId }, (tx) => parametersOf(tx, companyId, NOW.slice(0, 10)))
const median = async (companyId = firm.companyId) =>
  Math.exp((await parameters(companyId)).parameters.logMean[PARAMETER_KEYS.indexOf('medianCleanYears')] ?? Number.NaN)
const dueOf = async (bedId: string) => {
  const row = await inCompany(firm, (tx) => tx.bedForecast.findFirst({ where: { companyId: firm.companyId, bedId } }))
  return [row?.due10Day, row?.due50Day, row?.due90Day]
}
const tomorrowsTest = () =>
  inCompany(firm, (tx) =>
    tx.waterTest.create({
      data: {
        ...{ companyId: firm.companyId, id: newId(), siteId: firm.siteId, day: dateOf('2026-12-03'), point: 'softener-inlet' },
        ...{ freeChlorineMgL: 4, ironMgL: 5, entered: {}, source: 'typed in' },
      },
    }),
  )

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

test('a refit that was broken off today is carried on by the task’s next try, not begun anew; one of another day or cause is given up', async () => {
  const open = (cause: string) => openCompanyRun({ companyId: firm.companyId, cause, refits: true })
  const shown = () => inCompany(firm, (tx) => tx.forecastRun.findMany({ where: { refits: true, beds: 2 }, orderBy: { id: 'asc' } }))
  const broken = await open('nightly')
  await refit()
  expect((await shown()).map((run) => run.id)).toEqual([broken])
  const other = await open('refit')
  await refit()
  expect((await shown()).map((run) => run.id)).not.toContain(other)
  const old = await open('nightly')
  await inCompany(firm, (tx) => tx.forecastRun.updateMany({ where: { id: old }, data: { asOfDay: dateOf('2026-12-01') } }))
  await refit()
  expect((await shown()).map((run) => run.id)).not.toContain(old)
})

describe('learning from a company’s own records', () => {
  test('without a failure on record two beds at work move the industry’s rules of thumb by a hair, and by no fall-back', async () => {
    await refit()
    const [fit] = await fits()
    expect(fit).toMatchObject({ failures: 0, fellBackBecause: null })
    expect(Math.abs((await median()) / TRADE_PRIORS.medianCleanYears.median - 1)).toBeLessThan(0.05)
    expect((await dueOf(firm.bedId))[1]).toBeInstanceOf(Date)
  })

  test('beds that lasted a third as long as the trade says move the life, and each forecast names its fit', async () => {
    await addManyBeds(firm, 60, 4.5)
    await refit()
    const [fit] = await fits()
    expect(fit).toMatchObject({ failures: 60, endedBeds: 60, fellBackBecause: null })
    expect(fit?.shownAt).not.toBeNull()
    // The firm’s chlorine takes its share of the blame, so the life on clean water moves by less.
    expect(await median()).toBeLessThan(0.9 * TRADE_PRIORS.medianCleanYears.median)
    const run = await inCompany(firm, (tx) => tx.forecastRun.findFirstOrThrow({ where: { fitId: fit?.id }, include: { forecasts: true } }))
    expect(run).toMatchObject({ cause: 'nightly', parametersVersion: fit?.version })
    expect(run.forecasts).toHaveLength(62)
  })

  test('the same records are fitted once; a bed forecast later goes by the fit that is shown', async () => {
    await addManyBeds(firm, 20, 8)
    await refit()
    // Rows written anew lie elsewhere on the disk, and a table with statistics is read otherwise: what is read without an order comes in another.
    for (const table of ['bed', 'water_test', 'supply_period', 'inspection', 'pre_treatment', 'job'])
      await db.query(
        `update ${table} set id = id where company_id = $1 and ctid in (select ctid from ${table} where company_id = $1 limit 5)`,
        [firm.companyId],
      )
    await db.query('analyze')
    await refit()
    const [fit, ...more] = await fits()
    expect(more).toEqual([])
    await refreshBeds({ companyId: firm.companyId, bedIds: [firm.bedId], cause: 'edit' })
    const run = await inCompany(firm, (tx) => tx.forecastRun.findFirst({ where: { scope: 'beds', fitId: { not: null } } }))
    expect(run?.fitId).toBe(fit?.id)
  })

  test('another firm’s records change nothing of this firm’s fit', async () => {
    await addManyBeds(firm, 20, 8)
    await refit()
    const before = await parameters()
    const { dataHash } = await readCompanyRecords(firm.companyId)
    const other = await makeFirmRecords(db)
    await addManyBeds(other, 60, 3)
    await refit(other.companyId)
    await refit()
    expect((await readCompanyRecords(firm.companyId)).dataHash).toBe(dataHash)
    expect(await parameters()).toEqual(before)
    expect(await fits()).toHaveLength(1)
    expect(await median(other.companyId)).toBeLessThan(await median())
  })

  test('a test dated tomorrow changes neither today’s fit nor today’s forecasts', async () => {
    await addManyBeds(firm, 20, 8)
    await refit()
    const [before, due] = [await parameters(), await dueOf(firm.bedId)]
    await tomorrowsTest()
    await refit()
    expect(await fits()).toHaveLength(2)
    expect((await parameters()).parameters.logMean).toEqual(before.parameters.logMean)
    expect(await dueOf(firm.bedId)).toEqual(due)
    // The same test dated yesterday does: what is tried here can be told apart.
    await inCompany(firm, (tx) => tx.waterTest.updateMany({ where: { ironMgL: 5 }, data: { day: dateOf('2020-12-01') } }))
    await refit()
    expect(await dueOf(firm.bedId)).not.toEqual(due)
  })

  test('five more ended beds ask for a refit before the night, four do not', async () => {
    const { inService } = await addManyBeds(firm, 20, 8)
    await refit()
    const end = (count: number) =>
      inCompany(firm, (tx) =>
        tx.bed.updateMany({
          where: { id: { in: inService.slice(0, count) } },
          data: { endedEarliest: dateOf('2026-12-01'), endedLatest: dateOf('2026-12-01'), endCause: 'worn' },
        }),
      )
    const asked = async () =>
      (await db.query(`select from queue.job where name = 'refit-company' and data->>'companyId' = $1`, [firm.companyId])).rowCount
    await end(4)
    await refreshBeds({ companyId: firm.companyId, bedIds: inService.slice(0, 4), cause: 'close-out' })
    expect(await asked()).toBe(0)
    await end(5)
    await refreshBeds({ companyId: firm.companyId, bedIds: inService.slice(4, 5), cause: 'close-out' })
    expect(await asked()).toBe(1)
  })
})
