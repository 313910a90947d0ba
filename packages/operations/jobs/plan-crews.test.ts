import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readPlan } from '@almanac/database/read/plan-page'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { openCrews } from './open-crews.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { startPlan } from './start-plan.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { workOutPlan } from './work-out-plan.ts'

const id = () => ({ commandId: newId() })
let firm: Firm
const people = new Map<string, string>()

const north = (miles: number) => ({ latitude: 41.72 + miles / 69.09, longitude: -88.44 })
async function waiting(label: string, miles: number, kind: 'annual-visit' | 'rebed', minutes: number) {
  const { siteId, bedId } = await makeBed(firm, label)
  await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: north(miles) }))
  return proposeJob(firm, { ...id(), siteId, bedId, kind, dueLatest: DAY, minutes, crewSize: kind === 'rebed' ? 2 : 1 })
}
async function formed() {
  const { planId } = await startPlan(firm, { ...id(), fromDay: DAY, days: 1, asked: { kind: 'crews' } })
  await workOutPlan({ companyId: firm.companyId, planId })
  return readPlan(firm, planId)
}
const open = (plan: { id: string; version: number }, crews: number[]) =>
  openCrews(firm, { ...id(), planId: plan.id, version: plan.version, crews })
const sheets = () =>
  inCompany(firm, (tx) =>
    tx.crewDay.findMany({ where: { companyId: firm.companyId }, include: { members: true }, orderBy: { name: 'asc' } }),
  )

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  const yard = { yardLatitude: 41.72, yardLongitude: -88.44 }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  for (const name of ['Ada', 'Bo', 'Callum', 'Ruth']) people.set(name, await makeColleague(firm, name))
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('who goes with whom', () => {
  test('a day with a rebed and two long visits: two go together, two alone, each with a vehicle; their sheets are opened once', async () => {
    await makeVehicle(firm, 'van 1')
    await makeVehicle(firm, 'van 2')
    await makeVehicle(firm, 'van 3')
    await waiting('Rebed Road', 2, 'rebed', 360)
    await waiting('Long Lane', 3, 'annual-visit', 360)
    await waiting('Late Lane', 4, 'annual-visit', 360)
    const plan = await formed()
    expect(plan.state).toBe('ready')
    expect(plan.crews?.formed.map((crew) => crew.people.length).sort()).toEqual([1, 1, 2])
    expect(plan.after?.waiting).toBe(0)
    // One of two who are alone can do no rebed.
    expect(plan.before?.waiting).toBe(1)
    const pair = plan.crews?.formed.findIndex((crew) => crew.people.length === 2) ?? -1
    await open(plan, [pair])
    const [sheet, ...none] = await sheets()
    expect(none).toEqual([])
    expect(sheet?.members).toHaveLength(2)
    const after = await readPlan(firm, plan.id)
    expect(after.crews?.formed.map((crew) => crew.opened)).toEqual([0, 1, 2].map((one) => one === pair))
    expect(after.state).toBe('ready')
    await open(after, [0, 1, 2])
    expect(await sheets()).toHaveLength(3)
    expect((await readPlan(firm, plan.id)).state).toBe('accepted')
  })

  test('whoever stands on a sheet, is away or has left is not asked, nor is their vehicle', async () => {
    const van = await makeVehicle(firm, 'van 1')
    await makeVehicle(firm, 'van 2')
    await openDaySheet(firm, {
      ...{ ...id(), day: DAY, name: 'Pair', colleagueIds: [people.get('Ada') ?? '', people.get('Bo') ?? ''] },
      ...{ vehicleId: van, from: '08:00', until: '17:00' },
    })
    await waiting('Long Lane', 3, 'annual-visit', 60)
    const plan = await formed()
    const on = plan.crews?.formed.flatMap((crew) => crew.people.map((one) => one.name)) ?? []
    expect([...on, ...(plan.crews?.spare ?? [])].sort()).toEqual(['Callum', 'Ruth'])
    expect(plan.crews?.formed.map((crew) => crew.vehicle.name)).toEqual(['van 2'])
  })

  test('without a free vehicle, or with everybody on a sheet, it says so and nothing is changed', async () => {
    expect(await formed()).toMatchObject({ state: 'failed', failure: expect.stringMatching(/No vehicle is free/) })
    const all = { colleagueIds: [...people.values()], vehicleId: null }
    await openDaySheet(firm, { ...id(), day: DAY, name: 'All', ...all, from: '08:00', until: '17:00' })
    await makeVehicle(firm, 'van 1')
    expect(await formed()).toMatchObject({ state: 'failed', failure: expect.stringMatching(/on a sheet already/) })
  })

  test('somebody put on another sheet meanwhile refuses them all by name, and no sheet is opened', async () => {
    await makeVehicle(firm, 'van 1')
    await makeVehicle(firm, 'van 2')
    await waiting('Long Lane', 3, 'annual-visit', 60)
    const plan = await formed()
    const [taken] = plan.crews?.formed.at(-1)?.people ?? []
    const elsewhere = { day: DAY, name: 'Elsewhere', colleagueIds: [taken?.id ?? ''], vehicleId: null, from: '08:00', until: '17:00' }
    await openDaySheet(firm, { ...id(), ...elsewhere })
    await expect(open(plan, [0, 1])).rejects.toThrow(new RegExp(`${taken?.name} is on the sheet Elsewhere`))
    expect(await sheets()).toHaveLength(1)
  })
})
