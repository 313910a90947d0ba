import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readJobOffer, readPublicOffer } from '@almanac/database/read/window-offers'
import { now, setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bookVisit } from './book-visit.ts'
import { callOffJob } from './call-off-job.ts'
import { chooseWindow, confirmWindow } from './confirm-window.ts'
import { lapseCompanyOffers } from './lapse-offers.ts'
import { moveVisit } from './move-visit.ts'
import { offerWindows } from './offer-windows.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { withdrawOffer } from './withdraw-offer.ts'

const [MONDAY, TUESDAY] = ['2026-12-07', '2026-12-08']
const id = () => ({ commandId: newId() })
const standAt = (instant: string) => setClock(() => new Date(instant))

let firm: Firm
let monday: string
let tuesday: string
let jobId: string

const propose = async (label: string) => {
  const { siteId, bedId } = await makeBed(firm, label)
  return (await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })).jobId
}
const offer = (more: Partial<Parameters<typeof offerWindows>[1]> = {}) =>
  offerWindows(firm, {
    ...{ ...id(), jobId, jobVersion: 1, windowMinutes: 120, holdHours: 24 },
    places: [
      { crewDayId: monday, at: '08:00' },
      { crewDayId: tuesday, at: '13:00' },
    ],
    ...more,
  })
const windows = async () => (await readJobOffer(firm, jobId, now()))?.windows ?? []
const book = (job: string, crewDayId: string, at: string) =>
  bookVisit(firm, { ...id(), jobId: job, jobVersion: 1, crewDayId, at, confirmed: [] })
const visitStates = async () => (await everythingOf(firm)).visits.map((one) => one.state).sort()

beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  standAt('2026-12-02T16:00:00Z')
  firm = await makeFirm()
  const colleagueIds = [await makeColleague(firm, 'Ruth Ames'), await makeColleague(firm, 'Callum Orr')]
  const crew = { name: 'Ruth & Callum', colleagueIds, vehicleId: await makeVehicle(firm), from: '08:00', until: '17:00' }
  monday = (await openDaySheet(firm, { ...id(), ...crew, day: MONDAY })).crewDayId
  tuesday = (await openDaySheet(firm, { ...id(), ...crew, day: TUESDAY })).crewDayId
  jobId = await propose('Orchard Lane 14')
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('offering times', () => {
  test('holds crew and vehicle at each of them, so that nobody else is booked there', async () => {
    await offer()
    expect(await windows()).toMatchObject([
      { day: MONDAY, from: '2026-12-07T15:00:00.000Z', until: '2026-12-07T17:00:00.000Z' },
      { day: TUESDAY, from: '2026-12-08T20:00:00.000Z', until: '2026-12-08T22:00:00.000Z' },
    ])
    await expect(book(await propose('Weir Road 8'), monday, '09:00')).rejects.toMatchObject({ code: 'conflict' })
    await expect(book(await propose('Weir Road 9'), monday, '12:00')).resolves.toMatchObject({ jobVersion: 2 })
  })

  test('holds nothing at all when one of the times is taken', async () => {
    await book(await propose('Weir Road 8'), tuesday, '13:00')
    const before = await everythingOf(firm)
    await expect(offer()).rejects.toMatchObject({ code: 'conflict' })
    expect(await everythingOf(firm)).toEqual(before)
  })

  test('refuses a time that comes before the hold is over, and a job that has its visit', async () => {
    await expect(offer({ holdHours: 168 })).rejects.toThrow('before the customer')
    await book(jobId, monday, '08:00')
    await expect(offer({ jobVersion: 2 })).rejects.toThrow('no visit yet')
  })

  test('a second offer takes the place of the first', async () => {
    await offer()
    await offer({ places: [{ crewDayId: monday, at: '08:00' }] })
    expect(await windows()).toHaveLength(1)
    expect(await visitStates()).toEqual(['called-off', 'called-off', 'offered'])
  })
})

describe('the customer’s choice', () => {
  test('books that time with its promised window and frees the others, and counts once', async () => {
    const { offerId } = await offer()
    const [first, second] = await windows()
    const choice = { companyId: firm.companyId, offerId }
    const chosen = await chooseWindow(choice, second?.visitId ?? '')
    expect(chosen).toMatchObject({ jobId, jobVersion: 2 })
    expect(await visitStates()).toEqual(['booked', 'called-off'])
    const after = await everythingOf(firm)
    expect(await chooseWindow(choice, second?.visitId ?? '')).toEqual(chosen)
    expect(await everythingOf(firm)).toEqual(after)
    await expect(chooseWindow(choice, first?.visitId ?? '')).rejects.toThrow('Another of these times was chosen')
    expect(await readPublicOffer(choice, now())).toMatchObject({ state: 'confirmed', chosen: { day: TUESDAY } })
    await expect(book(await propose('Weir Road 8'), monday, '08:00')).resolves.toMatchObject({ jobVersion: 2 })
  })

  test('on the phone is refused when a colleague changed the offer meanwhile', async () => {
    const { offerId } = await offer()
    const [first] = await windows()
    await withdrawOffer(firm, { ...id(), offerId, version: 1 })
    const confirm = confirmWindow(firm, { ...id(), offerId, version: 1, visitId: first?.visitId ?? '' })
    await expect(confirm).rejects.toMatchObject({ code: 'version-conflict', detail: { current: { state: 'withdrawn' } } })
  })

  test('of two at the same moment books one, the other hears of it', async () => {
    const { offerId } = await offer()
    const visitIds = (await windows()).map((one) => one.visitId)
    const choices = await Promise.allSettled(visitIds.map((visitId) => chooseWindow({ companyId: firm.companyId, offerId }, visitId)))
    expect(choices.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(await visitStates()).toEqual(['booked', 'called-off'])
  })

  test('of another firm’s offer, or of a visit that is not in it, is not found', async () => {
    const { offerId } = await offer()
    const stranger = await makeFirm()
    const [first] = await windows()
    await expect(chooseWindow({ companyId: stranger.companyId, offerId }, first?.visitId ?? '')).rejects.toMatchObject({
      code: 'not-found',
    })
    await expect(chooseWindow({ companyId: firm.companyId, offerId }, newId())).rejects.toMatchObject({ code: 'not-found' })
  })
})

describe('a hold whose time is up', () => {
  const LATER = '2026-12-03T16:00:01Z'

  test('can be chosen no more', async () => {
    const { offerId } = await offer()
    const [first] = await windows()
    standAt(LATER)
    expect(await windows()).toEqual([])
    await expect(chooseWindow({ companyId: firm.companyId, offerId }, first?.visitId ?? '')).rejects.toThrow('no longer held')
  })

  test('stands in nobody’s way, even before the sweep', async () => {
    await offer()
    standAt(LATER)
    await expect(book(await propose('Weir Road 8'), monday, '08:00')).resolves.toMatchObject({ jobVersion: 2 })
  })

  test('is freed by the sweep, once; one that still runs is left', async () => {
    await offer()
    await lapseCompanyOffers(firm)
    expect(await visitStates()).toEqual(['offered', 'offered'])
    standAt(LATER)
    await lapseCompanyOffers(firm)
    const after = await everythingOf(firm)
    expect(after.visits.map((one) => one.state)).toEqual(['called-off', 'called-off'])
    expect(after.assignments.every((one) => one.released)).toBe(true)
    await lapseCompanyOffers(firm)
    expect(await everythingOf(firm)).toEqual(after)
  })
})

test('a job that is booked or called off takes its offer back', async () => {
  await offer()
  await book(jobId, monday, '12:00')
  expect(await visitStates()).toEqual(['booked', 'called-off', 'called-off'])
  jobId = await propose('Weir Road 8')
  await offer()
  await callOffJob(firm, { ...id(), jobId, version: 1, reason: 'the house was sold' })
  expect(await windows()).toEqual([])
})

test('moving a visit out of the promised window asks first, and within it does not', async () => {
  const { offerId } = await offer()
  const [first] = await windows()
  const { visitId } = await chooseWindow({ companyId: firm.companyId, offerId }, first?.visitId ?? '')
  const move = (at: string, version: number, confirmed: ['promise'] | [] = []) =>
    moveVisit(firm, { ...id(), visitId, version, at, confirmed })
  await expect(move('13:00', 2)).rejects.toMatchObject({ code: 'conflict', detail: { confirm: ['promise'] } })
  await expect(move('09:30', 2)).resolves.toMatchObject({ version: 3 })
  await expect(move('13:00', 3, ['promise'])).resolves.toMatchObject({ version: 4 })
})

test('on the day the clocks go back, the promised window keeps its clock', async () => {
  standAt('2026-10-29T12:00:00Z')
  firm = await makeFirm('America/Chicago')
  const colleagueIds = [await makeColleague(firm, 'Ruth Ames'), await makeColleague(firm, 'Callum Orr')]
  const crew = { name: 'Night pair', colleagueIds, vehicleId: await makeVehicle(firm), from: '00:30', until: '08:00' }
  // 1 November 2026: 02:00 CDT becomes 01:00 CST (US Energy Policy Act of 2005, first Sunday in November).
  monday = (await openDaySheet(firm, { ...id(), ...crew, day: '2026-11-01' })).crewDayId
  jobId = await propose('Mill bakery')
  await offer({ places: [{ crewDayId: monday, at: '03:00' }] })
  expect(await windows()).toMatchObject([{ from: '2026-11-01T09:00:00.000Z', until: '2026-11-01T11:00:00.000Z' }])
  await inCompany(firm, async (tx) => {
    const [visit] = await tx.visit.findMany({ where: { companyId: firm.companyId } })
    expect(visit?.startsAt.toISOString()).toBe('2026-11-01T09:00:00.000Z')
  })
})
