import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { addAbsence } from '../crews/add-absence.ts'
import { bestPlaces } from './best-places.ts'
import { bookVisit } from './book-visit.ts'
import { changeJob } from './change-job.ts'
import { moveVisit } from './move-visit.ts'
import { offerWindows } from './offer-windows.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { DAY, everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'

const YARD = { latitude: 41.72, longitude: -88.44 }
const NEXT = '2026-12-04'
const id = () => ({ commandId: newId() })
let firm: Firm
let sheet: string
let nextDay: string

/** A job of an hour so many miles north of the yard; a degree of latitude is 69.09 miles. */
async function jobAt(label: string, miles: number, more: { kind?: 'rebed' | 'annual-visit'; minutes?: number } = {}) {
  const { siteId, softenerId, bedId } = await makeBed(firm, label)
  const place = { latitude: YARD.latitude + miles / 69.09, longitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: place }))
  const { jobId } = await proposeJob(firm, { ...id(), siteId, softenerId, bedId, kind: 'annual-visit', minutes: 60, crewSize: 1, ...more })
  return jobId
}
const book = (jobId: string, at: string, more: Partial<Parameters<typeof bookVisit>[1]> = {}) =>
  bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: sheet, at, confirmed: [], ...more })

beforeAll(() => setClock(() => new Date('2026-12-02T16:00:00Z')))
beforeEach(async () => {
  firm = await makeFirm()
  const yard = { yardLatitude: YARD.latitude, yardLongitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  const crew = { colleagueIds: [await makeColleague(firm, 'Ruth')], vehicleId: await makeVehicle(firm), from: '08:00', until: '17:00' }
  sheet = (await openDaySheet(firm, { ...id(), ...crew, name: 'Ruth', day: DAY })).crewDayId
  nextDay = (await openDaySheet(firm, { ...id(), ...crew, name: 'Ruth', day: NEXT })).crewDayId
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('a place taken by hand', () => {
  test('is asked about once, with all that is unusual, and then stands; on another day too', async () => {
    const jobId = await jobAt('Weir Road 3', 0)
    setClock(() => new Date('2026-12-04T01:00:00Z')) // six in the evening of that day
    // It ends at half past five, and has passed.
    await expect(book(jobId, '16:30')).rejects.toMatchObject({
      detail: { confirm: ['past', 'outside-hours'] },
      message: expect.stringMatching(/has already passed\. The visit would last .* Nothing was changed\. Book it there anyway\?$/),
    })
    const { visitId, version } = await book(jobId, '16:30', { confirmed: ['past', 'outside-hours'] })
    setClock(() => new Date('2026-12-02T16:00:00Z'))
    await moveVisit(firm, { ...id(), visitId, version, crewDayId: nextDay, at: '10:15', confirmed: [] })
    const { visits } = await everythingOf(firm)
    expect(visits).toMatchObject([{ crewDayId: nextDay, startsAt: new Date(`${NEXT}T17:15:00Z`) }])
  })

  test('between two visits wants its drives too; at the ends of the day the crew leaves and comes home in its hours', async () => {
    await book(await jobAt('Near one', 0), '10:00')
    await book(await jobAt('Near two', 0), '13:00')
    // Fifteen miles and back: about half an hour each way, by hand about 18 road miles at 35 to 40 mph.
    const far = await jobAt('Far', 15)
    await expect(book(far, '11:05')).rejects.toMatchObject({
      detail: { confirm: ['drive'] },
      message: expect.stringMatching(/^The drive from Near one takes (2|3)\d min, and there are 5 min for it\./),
    })
    await expect(book(far, '11:55')).rejects.toMatchObject({ detail: { confirm: ['drive'] } })
    await expect(book(far, '08:05')).rejects.toMatchObject({
      detail: { confirm: ['outside-hours'] },
      message: expect.stringMatching(/The crew would leave at 7:\d\d\sAM, before its day begins/),
    })
    await expect(book(far, '15:50')).rejects.toMatchObject({
      detail: { confirm: ['outside-hours'] },
      message: expect.stringMatching(/The crew would be back at 5:\d\d\sPM, after its day ends/),
    })
    expect(await book(far, '14:45')).toBeTruthy()
  })

  test('beyond what the vehicle takes is asked about', async () => {
    await inCompany(firm, (tx) => tx.vehicle.updateMany({ where: { companyId: firm.companyId }, data: { volumeFt3: 2.5 } }))
    const more = { kind: 'rebed' as const, minutes: 120 }
    await book(await jobAt('First', 0, more), '08:00', { confirmed: ['parts'] })
    // Two beds of 1½ ft³ in one morning, into 2½.
    await expect(book(await jobAt('Second', 0, more), '10:00', { confirmed: ['parts'] })).rejects.toMatchObject({
      detail: { confirm: ['load'] },
      message: expect.stringMatching(/^van 2 takes (2 1\/2|2½)\sft³/),
    })
  })

  test('can be promised in the same breath, at a time that it keeps', async () => {
    const jobId = await jobAt('Weir Road 3', 0)
    const promise = { from: '09:00', until: '11:00' }
    await expect(book(jobId, '13:00', { promise })).rejects.toThrow('outside what would be promised')
    await book(jobId, '10:00', { promise })
    expect((await everythingOf(firm)).visits).toMatchObject([
      { promisedBy: 'phone', arriveFrom: new Date(`${DAY}T16:00:00Z`), arriveUntil: new Date(`${DAY}T18:00:00Z`) },
    ])
  })
})

describe('best places', () => {
  test('are asked for by day, half and crew, each with the last start that its gap has', async () => {
    const jobId = await jobAt('Weir Road 3', 0)
    await book(await jobAt('Noon', 0), '12:00')
    const places = async (more: object) =>
      (await bestPlaces(firm, { jobId, ...more })).places.map(({ day, at, lastAt }) => [day, at, lastAt]).sort()
    // At the yard itself there is no drive: an hour before twelve, and after one until four.
    expect(await places({ day: DAY })).toEqual([
      [DAY, '08:00', '11:00'],
      [DAY, '13:00', '16:00'],
    ])
    expect(await places({ day: NEXT, half: 'afternoon' })).toEqual([[NEXT, '12:00', '16:00']])
    expect(await places({ half: 'morning' })).toEqual([
      [DAY, '08:00', '11:00'],
      [NEXT, '08:00', '11:55'],
    ])
    expect(await places({ crewName: 'Nobody' })).toEqual([])
    expect(await bestPlaces(firm, { jobId, crewName: 'Ruth' })).toMatchObject({ days: [DAY, NEXT], crews: ['Ruth'] })
  })

  test('do not stand beside the times that are only held for the same customer', async () => {
    const jobId = await jobAt('Weir Road 3', 0)
    await offerWindows(firm, {
      ...id(),
      jobId,
      jobVersion: 1,
      places: [{ crewDayId: sheet, at: '10:00' }],
      windowMinutes: 60,
      holdHours: 1,
    })
    const { places } = await bestPlaces(firm, { jobId, day: DAY })
    expect(places.map(({ at, lastAt }) => [at, lastAt])).toEqual([['08:00', '16:00']])
  })
})

test('a time whose way home takes overtime may be held for a customer, one without its drive between two visits may not', async () => {
  await book(await jobAt('Near one', 0), '10:00')
  await book(await jobAt('Near two', 0), '12:10')
  const jobId = await jobAt('Far', 15)
  const hold = (at: string) => ({ ...id(), jobId, jobVersion: 1, places: [{ crewDayId: sheet, at }], windowMinutes: 60, holdHours: 1 })
  await expect(offerWindows(firm, hold('11:05'))).rejects.toMatchObject({ detail: { confirm: ['drive'] } })
  await expect(offerWindows(firm, hold('15:50'))).resolves.toMatchObject({ version: 1 })
})

describe('a job that is changed', () => {
  const change = (jobId: string, version: number, more: Partial<Parameters<typeof changeJob>[1]> = {}) =>
    changeJob(firm, {
      ...{ ...id(), jobId, version, minutes: 90, crewSize: 1, needsVehicle: null, dueEarliest: null, dueLatest: NEXT, notes: 'side gate' },
      ...{ confirmed: [], ...more },
    })

  test('stretches its visit where that has room, and else changes nothing', async () => {
    const jobId = await jobAt('Weir Road 3', 0)
    await book(jobId, '10:00')
    await book(await jobAt('Next', 0), '11:30')
    await change(jobId, 2)
    const after = await everythingOf(firm)
    expect(after.jobs.find((one) => one.id === jobId)).toMatchObject({ minutes: 90, notes: 'side gate', version: 3 })
    expect(after.visits[0]).toMatchObject({ endsAt: new Date(`${DAY}T18:30:00Z`), version: 2 })
    await expect(change(jobId, 3, { minutes: 100 })).rejects.toThrow('Ruth and van 2 are at Next from 11:30')
    await expect(change(jobId, 3, { crewSize: 2 })).rejects.toThrow('Needs 2 people; this sheet has one person.')
    await expect(change(jobId, 3, { dueEarliest: '2026-12-05' })).rejects.toThrow('swap the days')
    await expect(change(jobId, 2)).rejects.toMatchObject({ code: 'version-conflict' })
    expect(await everythingOf(firm)).toEqual(after)
  })

  test('beyond the crew’s day is asked about, and a vehicle it needs must be there', async () => {
    const jobId = await jobAt('Weir Road 3', 0)
    await book(jobId, '16:00')
    await expect(change(jobId, 2)).rejects.toMatchObject({ detail: { confirm: ['outside-hours'] } })
    await change(jobId, 2, { confirmed: ['outside-hours'] })
    await inCompany(firm, (tx) => tx.crewDay.updateMany({ where: { companyId: firm.companyId }, data: { vehicleId: null } }))
    await expect(change(jobId, 3, { needsVehicle: true, confirmed: ['outside-hours'] })).rejects.toThrow('Needs a vehicle')
  })
})

test('days off name the visits booked on them, with what was promised, and are saved once they are confirmed', async () => {
  await book(await jobAt('Weir Road 3', 0), '10:00', { promise: { from: '09:00', until: '11:00' } })
  const [{ id: subjectId } = { id: '' }] = await inCompany(firm, (tx) => tx.colleague.findMany({ where: { companyId: firm.companyId } }))
  const away = { of: 'person' as const, subjectId, fromDay: DAY, untilDay: NEXT, word: null }
  await expect(addAbsence(firm, { ...id(), ...away })).rejects.toMatchObject({
    detail: { confirm: ['crew'] },
    message: expect.stringMatching(
      /^One visit is booked then: Thu, Dec 3 10:00\sAM, Weir Road 3 \(promised 9:00 – 11:00\sAM\)\. Nothing was saved\./,
    ),
  })
  const absences = () => inCompany(firm, (tx) => tx.absence.count({ where: { companyId: firm.companyId } }))
  expect(await absences()).toBe(0)
  await addAbsence(firm, { ...id(), ...away, fromDay: NEXT })
  await addAbsence(firm, { ...id(), ...away, confirmed: true })
  expect(await absences()).toBe(2)
})
