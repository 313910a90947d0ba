import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bookVisit } from '../jobs/book-visit.ts'
import { callOffVisit } from '../jobs/call-off-visit.ts'
import { openDaySheet } from '../jobs/open-day-sheet.ts'
import { proposeJob } from '../jobs/propose-job.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeForecast, makeVehicle } from '../jobs/test-firm.ts'
import { loadList } from './load-list.ts'
import { orderList } from './order-list.ts'
import { pickKits } from './pick-kits.ts'

const id = () => ({ commandId: newId() })
const TODAY = '2026-12-02'
const firmFacts = { today: TODAY, display: { locale: 'en-US', unitSystem: 'us' as const }, figures: USUAL_FIGURES }

let firm: Firm
let sheet: string
let resin: string
let tube: string

async function keep(name: string, kind: string, unit: string, onHand: number, more: { bagFt3?: number; resinKind?: string } = {}) {
  const itemId = newId()
  await inCompany(firm, (tx) => tx.stockItem.create({ data: { companyId: firm.companyId, id: itemId, name, kind, unit, onHand, ...more } }))
  return itemId
}
const reservations = () =>
  inCompany(firm, (tx) => tx.kitReservation.findMany({ where: { companyId: firm.companyId }, orderBy: { quantity: 'desc' } }))
async function bookRebed(label: string, at: string) {
  const { siteId, bedId } = await makeBed(firm, label)
  const { jobId } = await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })
  return bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: sheet, at, confirmed: ['parts'] })
}

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  const colleagueIds = [await makeColleague(firm, 'Ruth Ames'), await makeColleague(firm, 'Callum Orr')]
  const crew = { name: 'Pair', colleagueIds, vehicleId: await makeVehicle(firm), from: '08:00', until: '17:00' }
  sheet = (await openDaySheet(firm, { ...id(), ...crew, day: DAY })).crewDayId
  resin = await keep('8% resin, ½ ft³', 'resin', 'bag', 2, { bagFt3: 0.5, resinKind: 'gel-8' })
  tube = await keep('Distributor tube 1.05 in', 'tube', 'piece', 1)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('a booked rebed', () => {
  test('speaks for its kit, and what is on the shelf is not touched', async () => {
    await bookRebed('Orchard Lane 14', '08:00')
    const held = await reservations()
    // 1½ ft³ is a bag of 1 and one of ½ ft³; the firm keeps that half bag and the tube, and nothing else of the kit.
    const byItem = new Map(held.map((one) => [one.stockItemId, one]))
    expect(byItem.get(tube)).toMatchObject({ quantity: 1, state: 'reserved' })
    expect(held).toHaveLength(2)
    const items = await inCompany(firm, (tx) => tx.stockItem.findMany({ where: { companyId: firm.companyId } }))
    expect(items.find((one) => one.id === tube)?.onHand).toBe(1)
  })

  test('that is called off gives it back', async () => {
    const { visitId } = await bookRebed('Orchard Lane 14', '08:00')
    await callOffVisit(firm, { ...id(), visitId, version: 1 })
    expect((await reservations()).map((one) => one.state)).toEqual(['returned', 'returned'])
    expect((await loadList(firm, sheet)).lines).toEqual([])
  })

  test('stands on the load list of its sheet, with others of the day, until it is loaded', async () => {
    await bookRebed('Orchard Lane 14', '08:00')
    await bookRebed('Weir Road 8', '11:00')
    const before = await loadList(firm, sheet)
    expect(before.picked).toBe(false)
    expect(before.lines.find((one) => one.stockItemId === tube)).toMatchObject({ quantity: 2, onHand: 1 })
    expect(await pickKits(firm, { ...id(), crewDayId: sheet })).toEqual({ lines: 4 })
    expect((await loadList(firm, sheet)).picked).toBe(true)
    await expect(pickKits(await makeFirm(), { ...id(), crewDayId: sheet })).rejects.toMatchObject({ code: 'not-found' })
  })
})

describe('the order list', () => {
  test('names what booked work finds too little of, first and by its day', async () => {
    await bookRebed('Orchard Lane 14', '08:00')
    await bookRebed('Weir Road 8', '11:00')
    const { lines } = await orderList(firm, firmFacts)
    const line = lines.find((one) => one.stockItemId === tube)
    // Two tubes spoken for, one there, two weeks to come: order on 19 November, which has passed.
    expect(line).toMatchObject({ reserved: 2, free: -1, shortForBookedOn: DAY, orderBy: '2026-11-19', order: 1 })
    expect(lines[0]?.orderBy).not.toBeNull()
  })

  test('counts on what the forecast expects beyond the booked, with the usual kit of the beds coming due', async () => {
    const bed = await makeBed(firm, 'Mill bakery')
    await makeForecast(firm, bed, '2027-01-10', '2029-01-01')
    await inCompany(firm, async (tx) => {
      const where = { companyId: firm.companyId }
      await tx.bedForecast.updateMany({ where, data: { chance12Months: 0.4 } })
      const run = await tx.forecastRun.findFirstOrThrow({ where })
      const month = { months: 1, mean: 3, low: 1, middle: 3, high: 5, beds: 20, runId: run.id }
      await tx.forecastMonth.create({ data: { ...where, id: newId(), month: new Date('2027-01-01'), ...month } })
    })
    const { lines } = await orderList(firm, firmFacts)
    // Three rebeds in January take three tubes; one is there, so two are missing from the middle of the month.
    expect(lines.find((one) => one.stockItemId === tube)).toMatchObject({
      reserved: 0,
      outOn: '2027-01-15',
      orderBy: '2027-01-01',
      order: 2,
    })
    // One half bag each, two on the shelf.
    expect(lines.find((one) => one.stockItemId === resin)).toMatchObject({ outOn: '2027-01-15', order: 1 })
  })

  test('of a firm with nothing booked and no forecast asks for nothing', async () => {
    const { lines } = await orderList(firm, firmFacts)
    expect(lines.every((one) => one.orderBy === null && one.order === 0)).toBe(true)
  })
})
