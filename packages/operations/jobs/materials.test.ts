import type { CloseOutInput } from '@almanac/contract/visits'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { reservedOf } from '@almanac/database/read/free-stock'
import { readMaterials } from '@almanac/database/read/materials'
import { readShortKits } from '@almanac/database/read/short-kits'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bookVisit } from './book-visit.ts'
import { callOffJob } from './call-off-job.ts'
import { callOffVisit } from './call-off-visit.ts'
import { closeOutVisit } from './close-out-visit.ts'
import { handOver, takeBack } from './hand-over.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { setMaterial } from './set-material.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'

const id = () => ({ commandId: newId() })
let firm: Firm
let jobId: string
let salt: string

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date(`${DAY}T20:00:00Z`))
})
beforeEach(async () => {
  firm = await makeFirm()
  const { siteId } = await makeBed(firm)
  jobId = (await proposeJob(firm, { ...id(), siteId, kind: 'delivery', dueLatest: '2026-12-11' })).jobId
  salt = newId()
  const item = { name: 'Salt, 40 lb bag', kind: 'salt', unit: 'bag', onHand: 6 }
  await inCompany(firm, (tx) => tx.stockItem.create({ data: { companyId: firm.companyId, id: salt, ...item } }))
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

const set = (quantity: number, jobVersion = 1) => setMaterial(firm, { ...id(), jobId, jobVersion, stockItemId: salt, quantity })
const lines = async () => (await readMaterials(firm, jobId)).lines
const onHand = () => inCompany(firm, async (tx) => (await tx.stockItem.findFirst({ where: { id: salt } }))?.onHand)
const job = () => inCompany(firm, (tx) => tx.job.findFirst({ where: { id: jobId } }))
const wanted = () =>
  inCompany(firm, async (tx) => (await reservedOf(tx, firm.companyId)).map((one) => [one.quantity, one.day?.toISOString().slice(0, 10)]))
const movements = () =>
  inCompany(firm, async (tx) => {
    const all = await tx.movement.findMany({ where: { companyId: firm.companyId }, orderBy: { id: 'asc' } })
    return all.map((one) => [one.reason, one.quantity, one.jobId === jobId, one.visitId !== null])
  })

describe('materials of a delivery', () => {
  test('are set aside, changed and taken off; the order list knows them by the day they are due', async () => {
    await set(4)
    expect(await lines()).toMatchObject([{ name: 'Salt, 40 lb bag', quantity: 4, state: 'reserved', free: 2 }])
    expect(await wanted()).toEqual([[4, '2026-12-11']])
    await set(9, 2)
    // More than the shelf has is wanted all the same: it is ordered.
    expect(await lines()).toMatchObject([{ quantity: 9, free: -3 }])
    await set(0, 3)
    expect(await lines()).toEqual([])
    expect(await wanted()).toEqual([])
    expect(await onHand()).toBe(6)
  })

  test('are refused for another kind of job, a page that is old, and an item that is not kept', async () => {
    const { siteId, bedId } = await makeBed(firm, 'Weir Road 8')
    const rebed = await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })
    await expect(setMaterial(firm, { ...id(), jobId: rebed.jobId, jobVersion: 1, stockItemId: salt, quantity: 1 })).rejects.toThrow(
      /Materials go with a delivery/,
    )
    await set(4)
    await expect(set(5)).rejects.toMatchObject({ code: 'version-conflict' })
    await expect(setMaterial(firm, { ...id(), jobId, jobVersion: 2, stockItemId: newId(), quantity: 1 })).rejects.toMatchObject({
      code: 'not-found',
    })
    await expect(set(99_999, 2)).rejects.toThrow(/unusual/)
  })

  test('collected: out of the stores, and the job is closed that day; nothing more can be added', async () => {
    await expect(handOver(firm, { ...id(), jobId, jobVersion: 1, way: 'collected' })).rejects.toThrow(/Nothing is set aside/)
    await set(4)
    await handOver(firm, { ...id(), jobId, jobVersion: 2, way: 'collected' })
    expect(await job()).toMatchObject({ state: 'closed', closedDay: new Date(DAY) })
    expect(await lines()).toMatchObject([{ quantity: 4, state: 'handed-over', way: 'collected', handedAt: `${DAY}T20:00:00.000Z` }])
    expect([await onHand(), await movements(), await wanted()]).toEqual([2, [['handed-over', -4, true, false]], []])
    await expect(set(1, 3)).rejects.toThrow(/This delivery is over/)
  })

  test('come back, at most as many as went', async () => {
    await set(4)
    await handOver(firm, { ...id(), jobId, jobVersion: 2, way: 'shipped' })
    const [line] = await lines()
    if (!line) throw new Error('no line')
    const back = (quantity: number, version: number) => takeBack(firm, { ...id(), lineId: line.id, version, quantity })
    await back(1, line.version)
    expect([await onHand(), await lines()]).toMatchObject([3, [{ returned: 1, state: 'handed-over' }]])
    await expect(back(4, line.version + 1)).rejects.toThrow('The customer has 3 bags of this, and more can’t come back.')
    await expect(back(1, line.version)).rejects.toMatchObject({ code: 'version-conflict' })
    await back(3, line.version + 1)
    expect([await onHand(), await lines()]).toMatchObject([6, [{ returned: 4, state: 'returned' }]])
    await expect(back(1, line.version + 2)).rejects.toThrow(/doesn’t have this/)
  })

  test('a job that is called off gives them back to the shelf', async () => {
    await set(4)
    await callOffJob(firm, { ...id(), jobId, version: 2, reason: 'bought elsewhere' })
    expect([await lines(), await wanted(), await onHand()]).toEqual([[], [], 6])
  })
})

describe('a visit that brings them', () => {
  async function book() {
    await set(4)
    const crew = { name: 'Solo', colleagueIds: [await makeColleague(firm, 'Ruth Ames')], vehicleId: await makeVehicle(firm) }
    const sheet = await openDaySheet(firm, { ...id(), ...crew, day: DAY, from: '08:00', until: '17:00' })
    return bookVisit(firm, { ...id(), jobId, jobVersion: 2, crewDayId: sheet.crewDayId, at: '15:00', confirmed: ['past'] })
  }
  const record = (visitId: string, more: Partial<CloseOutInput>): CloseOutInput => ({
    ...{
      visitId,
      jobKind: 'delivery',
      outcome: 'done',
      workDay: DAY,
      checks: [],
      measurements: [],
      partsUsed: [],
      oldBed: null,
      newBed: null,
    },
    ...{ startedAt: `${DAY}T19:00:00.000Z`, finishedAt: `${DAY}T19:20:00.000Z`, reason: '', hardnessReason: '', notes: '', ...more },
  })

  test('is wanted for its day, and its close-out hands them over', async () => {
    const { visitId } = await book()
    expect(await wanted()).toEqual([[4, DAY]])
    await expect(handOver(firm, { ...id(), jobId, jobVersion: (await job())?.version ?? 0, way: 'collected' })).rejects.toThrow(
      /A visit of this job is on a day sheet/,
    )
    await closeOutVisit(firm, { ...id(), record: record(visitId, {}) })
    expect(await lines()).toMatchObject([{ state: 'handed-over', way: 'delivered' }])
    expect([await onHand(), await movements()]).toEqual([2, [['handed-over', -4, true, true]]])
  })

  test('more than the shelf holds is said on its day sheet', async () => {
    const { visitId } = await book()
    const short = () => inCompany(firm, (tx) => readShortKits(tx, firm.companyId, DAY))
    expect(await short()).toEqual([])
    await set(9, (await job())?.version ?? 0)
    expect(await short()).toMatchObject([{ visitId, wanted: 9, item: { id: salt, onHand: 6 } }])
  })

  test('where nobody was at home, or that comes off its sheet, they stay set aside', async () => {
    const { visitId } = await book()
    await closeOutVisit(firm, { ...id(), record: record(visitId, { outcome: 'no-access', reason: 'nobody was at home' }) })
    expect([await lines(), await onHand(), (await job())?.state]).toMatchObject([[{ state: 'reserved' }], 6, 'proposed'])
  })

  test('called off, what was loaded is off the vehicle', async () => {
    const { visitId, version } = await book()
    await inCompany(firm, (tx) => tx.materialLine.updateMany({ where: { jobId }, data: { state: 'picked' } }))
    await callOffVisit(firm, { ...id(), visitId, version })
    expect(await lines()).toMatchObject([{ state: 'reserved' }])
  })
})
