import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { clockOfMinute } from '@almanac/units/calendar/zone-clock'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { bookVisit } from './book-visit.ts'
import { offerWindows } from './offer-windows.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { sheetsOfDay } from './sheets-of-day.ts'
import { DAY, everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeForecast, makeVehicle } from './test-firm.ts'
import { weekOfTowns } from './week-of-towns.ts'

const YARD = { latitude: 33.45, longitude: -112.07 }
const FAR = { latitude: 33.65, longitude: -112.07 }
const id = () => ({ commandId: newId() })
const ask = { day: DAY, kind: 'inspection' } as const
let firm: Firm
let crewDayId: string

/** A site in a town, with an inspection proposed for it. */
async function jobIn(town: string, place: { latitude: number; longitude: number } | null, label: string) {
  const made = await makeBed(firm, label)
  const { companyId } = firm
  await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId, id: made.siteId } }, data: { town, ...place } }))
  const { jobId } = await proposeJob(firm, { ...id(), siteId: made.siteId, bedId: made.bedId, kind: 'inspection', minutes: 60 })
  return { ...made, jobId }
}
const book = (jobId: string, at: string) => bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at, confirmed: [] })
const minutesOf = (one: { minutes: number | null } | undefined) => one?.minutes ?? Number.NaN

beforeAll(() => setClock(() => new Date(`${DAY}T13:00:00Z`))) // six in the morning in Phoenix
afterAll(() => setClock())
beforeEach(async () => {
  firm = await makeFirm()
  const yard = { yardLatitude: YARD.latitude, yardLongitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  const crew = { name: 'Ruth', colleagueIds: [await makeColleague(firm, 'Ruth Ames')], vehicleId: await makeVehicle(firm) }
  crewDayId = (await openDaySheet(firm, { ...id(), ...crew, from: '08:00', until: '17:00', day: DAY })).crewDayId
})

describe('a week, town by town', () => {
  test('counts what waits and what is due without a job, and says when crews are there', async () => {
    const booked = await jobIn('Fordham', FAR, 'Booked')
    await book(booked.jobId, '12:00')
    await jobIn('Larkmoor', YARD, 'Waiting one')
    const due = await jobIn('Larkmoor', YARD, 'Waiting two')
    await makeForecast(firm, due, '2027-01-10', '2028-01-10') // within three months, and an inspection is no rebed
    await makeForecast(firm, booked, '2027-09-10', '2028-09-10')
    const week = await weekOfTowns(firm, { ...ask, town: 'Fordham' })
    expect(week.days).toEqual(['2026-11-30', '2026-12-01', '2026-12-02', DAY, '2026-12-04'])
    expect(week.towns.map((one) => [one.town, one.waiting, one.due])).toEqual([
      ['Larkmoor', 2, 1],
      ['Fordham', 0, 0],
    ])
    expect(week.towns[1]?.visits).toEqual([{ day: DAY, from: 720, until: 780, held: false }])
    expect(week.sheets).toMatchObject([{ crewName: 'Ruth', hours: { from: 480, until: 1020 }, visits: [{ from: 720, until: 780 }] }])
    // Without a choice, the town with most waiting.
    expect(await weekOfTowns(firm, ask)).toMatchObject({
      town: 'Larkmoor',
      waiting: [{ siteLabel: 'Waiting one' }, { siteLabel: 'Waiting two' }],
    })
    // Whoever chooses among held times waits for nobody.
    const held = { places: [{ crewDayId, at: '14:00' }], windowMinutes: 60, holdHours: 1 }
    await offerWindows(firm, { ...id(), jobId: due.jobId, jobVersion: 1, ...held })
    const after = await weekOfTowns(firm, ask)
    expect(after).toMatchObject({ waiting: [{ siteLabel: 'Waiting one' }], towns: [{ waiting: 1 }, {}] })
    // And we are not there yet.
    expect(after.sheets[0]?.visits).toMatchObject([{ held: false }, { from: 840, held: true, promised: null }])
    // A job in hand asks for itself: its town, kind, people and length.
    const [, later] = week.towns
    expect(later?.town).toBe('Fordham')
    const { jobId } = await jobIn('Fordham', FAR, 'In hand')
    expect(await weekOfTowns(firm, { day: DAY, jobId })).toMatchObject({
      ...{ town: 'Fordham', kind: 'inspection', people: 1, minutes: 60 },
      waiting: [{ jobId, version: 1, minutes: 60, people: 1 }],
    })
  })

  test('knows a town however it is spelt: what waits and who is there is counted once, under the spelling of the most', async () => {
    const booked = await jobIn('brackwater', FAR, 'Booked')
    await book(booked.jobId, '12:00')
    await jobIn('Brackwater', FAR, 'Waiting one')
    await jobIn('Brackwater ', FAR, 'Waiting two')
    for (const town of ['Brackwater', 'brackwater']) {
      const week = await weekOfTowns(firm, { ...ask, town })
      expect(week.towns.map((one) => [one.town, one.waiting, one.visits.length])).toEqual([['Brackwater', 2, 1]])
      expect([week.town, week.waiting.map((one) => one.siteLabel).sort()]).toEqual(['Brackwater', ['Waiting one', 'Waiting two']])
    }
  })

  test('offers the stretches whose drives fit: a visit booked at either end of one leaves the sheet in order', async () => {
    await book((await jobIn('Fordham', FAR, 'Booked')).jobId, '12:00')
    const near = await jobIn('Larkmoor', YARD, 'Waiting')
    const [before, after] = (await weekOfTowns(firm, { ...ask, town: 'Larkmoor', minutes: 60 })).towns[0]?.places ?? []
    // Home at one: outside the rush hours, as the drives at either end of the gaps are. Told in whole minutes, and starts in fives.
    const drive = minutesOf((await sheetsOfDay(firm, DAY)).sheets[0]?.drives[1])
    expect(drive).toBeGreaterThan(15) // fourteen miles
    // The yard is in Larkmoor: no drive there, and the same drive on to the visit at twelve; after it, back again and home at once.
    expect(before).toMatchObject({ day: DAY, from: 480, addedDriveMinutes: 0 })
    const latest = 720 - 60 - drive
    expect(before?.lastStart).toBeGreaterThan(latest - 6.5)
    expect(before?.lastStart).toBeLessThanOrEqual(latest + 0.5)
    expect([before?.from, before?.lastStart, after?.from].map((minute) => (minute ?? 1) % 5)).toEqual([0, 0, 0])
    expect(after).toMatchObject({ lastStart: 1020 - 60 })
    expect(after?.from).toBeGreaterThanOrEqual(780 + drive - 0.5)
    expect(after?.from).toBeLessThan(780 + drive + 6.5)
    await book(near.jobId, clockOfMinute(before?.lastStart ?? 0))
    const [sheet] = (await sheetsOfDay(firm, DAY)).sheets
    expect(sheet?.warnings).toEqual([])
  })

  test('offers nothing to a crew that is too few, too far away or off; a town without a place on the map has no drives', async () => {
    await jobIn('Larkmoor', YARD, 'Waiting')
    await jobIn('Nowhere', null, 'Somewhere')
    await jobIn('Elsewhere', { latitude: 34.9, longitude: -112.07 }, 'A hundred miles')
    const places = async (input: Partial<Parameters<typeof weekOfTowns>[1]>) =>
      Object.fromEntries((await weekOfTowns(firm, { ...ask, ...input })).towns.map((one) => [one.town, one.places.length]))
    expect(await places({})).toEqual({ Larkmoor: 1, Elsewhere: 0, Nowhere: 0 })
    expect(await places({ people: 2 })).toMatchObject({ Larkmoor: 0 })
    expect(await places({ minutes: 560 })).toMatchObject({ Larkmoor: 0 }) // longer than her nine hours
    expect((await weekOfTowns(firm, ask)).towns.find((one) => one.town === 'Nowhere')?.driveMinutes).toBeNull()
    const { companyId } = firm
    const sheet = { where: { companyId_id: { companyId, id: crewDayId } } }
    const { vehicleId } = await inCompany(firm, (tx) => tx.crewDay.findUniqueOrThrow(sheet))
    const goBy = (vehicle: string | null) => inCompany(firm, (tx) => tx.crewDay.update({ ...sheet, data: { vehicleId: vehicle } }))
    expect(await places({ kind: 'delivery' })).toMatchObject({ Larkmoor: 1 })
    await goBy(null) // on foot
    expect(await places({ kind: 'delivery' })).toMatchObject({ Larkmoor: 0 })
    await goBy(vehicleId)
    await inCompany(firm, async (tx) => {
      const colleague = await tx.colleague.findFirstOrThrow({ where: { companyId } })
      const days = { fromDay: dateOf(DAY), untilDay: dateOf(DAY) }
      await tx.absence.create({ data: { companyId, id: newId(), colleagueId: colleague.id, ...days, word: 'ill' } })
    })
    expect(await places({})).toMatchObject({ Larkmoor: 0 })
  })

  test('shows a week that is over with its visits alone, writes nothing, and knows no other company', async () => {
    await book((await jobIn('Fordham', FAR, 'Booked')).jobId, '12:00')
    const before = await everythingOf(firm)
    setClock(() => new Date('2026-12-20T13:00:00Z'))
    const [town] = (await weekOfTowns(firm, ask)).towns
    setClock(() => new Date(`${DAY}T13:00:00Z`))
    expect(town).toMatchObject({ town: 'Fordham', places: [], visits: [{ from: 720 }] })
    expect(await everythingOf(firm)).toEqual(before)
    expect(await weekOfTowns(await makeFirm(), ask)).toMatchObject({ town: null, towns: [], sheets: [], otherTowns: [] })
  })
})
