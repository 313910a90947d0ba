import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readDueBeds } from '@almanac/database/read/due-beds'
import { readRebedPlan } from '@almanac/database/read/rebed-plan'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { addManyBeds } from '../../../tests/support/many-beds.ts'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { planRebeds } from '../forecasts/plan-rebeds.ts'
import { refreshCompany } from '../forecasts/refresh-forecasts.ts'
import { proposePlanned } from './propose-planned.ts'

let db: pg.Client
let firm: FirmRecords

const planned = () =>
  inCompany(firm, (tx) => tx.plannedRebed.findMany({ where: { companyId: firm.companyId }, orderBy: [{ month: 'asc' }, { bedId: 'asc' }] }))
const monthOf = (day: Date) => day.toISOString().slice(0, 7)
const plan = async () => {
  const found = await readRebedPlan(firm)
  if (!found) throw new Error('there is no plan')
  return found
}

beforeAll(async () => {
  db = await inspector()
  // Each look at the clock is a little later, so that "the newest" has a meaning.
  let ticks = Date.parse(NOW)
  setClock(() => new Date(ticks++))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
  await addManyBeds(firm, 12, 8)
  // A limit that all of them reach within five years, and two rebeds a month: they cannot all be done in the same one.
  await inCompany(firm, (tx) =>
    tx.companySettings.updateMany({ where: { companyId: firm.companyId }, data: { rebedsPerMonth: 2, riskLimit: 0.2 } }),
  )
  await refreshCompany({ companyId: firm.companyId, cause: 'nightly' })
  await planRebeds({ companyId: firm.companyId })
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('the month that the levelled plan gives each bed', () => {
  test('is kept, one row a bed, and its months add up to those of the plan', async () => {
    const rows = await planned()
    expect(rows.length).toBeGreaterThan(5)
    const { months, id } = await plan()
    for (const { month, rebeds } of months) expect(rows.filter((row) => monthOf(row.month) === month)).toHaveLength(rebeds)
    expect(new Set(rows.map((row) => row.planId))).toEqual(new Set([id]))
    for (const row of rows) {
      expect(row.earliestMonth.getTime()).toBeLessThanOrEqual(row.month.getTime())
      expect(row.month.getTime()).toBeLessThanOrEqual(row.latestMonth.getTime())
    }
    await planRebeds({ companyId: firm.companyId })
    expect(await planned()).toHaveLength(rows.length)
  })

  test('stands beside the bed in the list, which can be narrowed to a month', async () => {
    const [first] = await planned()
    const month = monthOf(first?.month ?? new Date(0))
    const rows = (await planned()).filter((row) => monthOf(row.month) === month)
    const found = await readDueBeds(firm, { sort: 'due', limit: 50, plannedMonth: month }, NOW.slice(0, 10))
    expect(found.rows.map((row) => row.bedId).sort()).toEqual(rows.map((row) => row.bedId).sort())
    expect(found.rows.map((row) => row.planned?.month)).toEqual(rows.map(() => month))
  })

  test('is the month its job is due in: the plan’s beds are proposed, not the due dates afresh', async () => {
    const [first] = await planned()
    const month = monthOf(first?.month ?? new Date(0))
    const beds = (await planned()).filter((row) => monthOf(row.month) === month).map((row) => row.bedId)
    const { id: planId } = await plan()
    const { results } = await proposePlanned(firm, { commandId: newId(), planId, month })
    expect(results.map((one) => [one.bedId, one.status]).sort()).toEqual(beds.map((bedId) => [bedId, 'proposed']).sort())
    const jobs = await inCompany(firm, (tx) =>
      tx.job.findMany({ where: { companyId: firm.companyId, bedId: { in: beds }, kind: 'rebed' } }),
    )
    for (const job of jobs) {
      expect(job.dueEarliest?.toISOString().slice(0, 10)).toBe(`${month}-01`)
      expect([monthOf(job.dueLatest as Date), monthOf(new Date((job.dueLatest as Date).getTime() + 86_400_000))]).toEqual([
        month,
        expect.not.stringMatching(month),
      ])
    }
    // Asked again, each is refused by itself.
    const again = await proposePlanned(firm, { commandId: newId(), planId, month })
    expect(again.results.map((one) => one.status)).toEqual(beds.map(() => 'refused'))
  })

  test('of a plan that was worked out anew meanwhile proposes nothing, nor of another firm’s', async () => {
    const { id: planId, months } = await plan()
    const month = months.find((one) => one.rebeds > 0)?.month ?? ''
    await planRebeds({ companyId: firm.companyId })
    await expect(proposePlanned(firm, { commandId: newId(), planId, month })).rejects.toMatchObject({ code: 'conflict' })
    const other = await makeFirmRecords(db)
    await expect(proposePlanned(other, { commandId: newId(), planId, month })).rejects.toMatchObject({ code: 'not-found' })
    expect(await inCompany(firm, (tx) => tx.job.count({ where: { companyId: firm.companyId, kind: 'rebed', state: 'proposed' } }))).toBe(0)
  })
})
