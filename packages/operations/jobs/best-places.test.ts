import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import type { JobKind } from '@almanac/records/job-kind'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { bestPlaces } from './best-places.ts'
import { bookVisit } from './book-visit.ts'
import { fitsWithDrives } from './fits-with-drives.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'

const YARD = { latitude: 41.72, longitude: -88.44 }
const LATER = '2026-12-09'
const id = () => ({ commandId: newId() })
let firm: Firm
let today: string
let later: string

/** A job so many miles north of the yard; a degree of latitude is 69.09 miles. */
async function jobAt(label: string, miles: number, kind: JobKind, minutes = 60) {
  const { siteId, softenerId } = await makeBed(firm, label)
  const place = { latitude: YARD.latitude + miles / 69.09, longitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: place }))
  return (await proposeJob(firm, { ...id(), siteId, softenerId, kind, minutes })).jobId
}
const book = (jobId: string, crewDayId: string, at: string) =>
  bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at, confirmed: [] })

beforeAll(() => setClock(() => new Date('2026-12-03T14:00:00Z')))
beforeEach(async () => {
  firm = await makeFirm()
  const yard = { yardLatitude: YARD.latitude, yardLongitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  const crew = {
    name: 'Ruth',
    colleagueIds: [await makeColleague(firm, 'Ruth')],
    vehicleId: await makeVehicle(firm),
    from: '08:00',
    until: '17:00',
  }
  today = (await openDaySheet(firm, { ...id(), ...crew, day: DAY })).crewDayId
  later = (await openDaySheet(firm, { ...id(), ...crew, day: LATER })).crewDayId
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('the first of the best places', () => {
  test.each([
    ['annual-visit', LATER],
    ['emergency', DAY],
    ['repair', DAY],
  ] as const)('for an %s is on %s, though next week’s crew is next door', async (kind, day) => {
    await book(await jobAt('Next door', 25, 'annual-visit'), later, '10:00')
    const { places } = await bestPlaces(firm, { jobId: await jobAt('Here', 25, kind) })
    expect(places.map((one) => one.day)).toEqual(expect.arrayContaining([DAY, LATER]))
    expect(places[0]?.day).toBe(day)
    const waiting = places.find((one) => one.day === LATER)?.words ?? ''
    // 3 to 9 December.
    if (kind === 'emergency') expect(waiting).toContain('6 days of waiting')
  })
})

test('a stretch that is long enough without its drives only takes no job', async () => {
  await book(await jobAt('Morning', 0, 'annual-visit', 240), today, '08:00')
  await book(await jobAt('Afternoon', 0, 'annual-visit', 240), today, '13:00')
  const near = await jobAt('Near', 0, 'annual-visit', 60)
  // 15 miles there and 15 on: more than the minutes that a job of an hour leaves of an hour.
  await jobAt('Far', 15, 'annual-visit', 60)
  const { fits, left } = await fitsWithDrives(firm, today)
  expect(fits.map((one) => one.jobId)).toEqual([near])
  expect(left).toContainEqual({ reason: 'Free time is too short with the drives there and on.', jobs: 1 })
})

test('a job that is not due for years has its places too, and they say so', async () => {
  const { siteId } = await makeBed(firm, 'Early')
  const { jobId } = await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit', dueEarliest: '2028-08-26', dueLatest: '2029-01-01' })
  const { places } = await bestPlaces(firm, { jobId })
  expect(places.map((one) => one.day)).toEqual(expect.arrayContaining([DAY, LATER]))
  expect(places[0]?.words).toBe('before its due window')
})
