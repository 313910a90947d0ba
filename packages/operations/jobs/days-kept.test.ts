import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { clockIn } from '@almanac/units/calendar/zone-clock'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { changeSettings } from '../firm/change-settings.ts'
import { publicHolidays } from '../shared/public-holidays.ts'
import { bestPlaces } from './best-places.ts'
import { bookVisit } from './book-visit.ts'
import { fitsWithDrives } from './fits-with-drives.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { readBoard } from './read-board.ts'
import { sheetsOfDay } from './sheets-of-day.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { weekOfTowns } from './week-of-towns.ts'

const YARD = { latitude: 33.45, longitude: -112.07 }
const id = () => ({ commandId: newId() })
let firm: Firm
let sheet: string

async function job(label: string, minutes: number) {
  const { siteId } = await makeBed(firm, label)
  await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: YARD }))
  return (await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit', minutes })).jobId
}
const book = (jobId: string, at: string) => bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: sheet, at, confirmed: [] })
const keep = (data: object) => inCompany(firm, (tx) => tx.companySettings.updateMany({ where: { companyId: firm.companyId }, data }))

beforeAll(() => setClock(() => new Date('2026-12-02T16:00:00Z')))
beforeEach(async () => {
  firm = await makeFirm()
  const yard = { yardLatitude: YARD.latitude, yardLongitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  const crew = { name: 'Ruth', colleagueIds: [await makeColleague(firm, 'Ruth')], vehicleId: await makeVehicle(firm) }
  sheet = (await openDaySheet(firm, { ...id(), ...crew, from: '08:00', until: '17:00', day: DAY })).crewDayId
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

test('the firm’s lunch and time in hand hold for the sheet, best places, faint lines, the week and the plan’s board alike', async () => {
  await book(await job('Morning', 210), '08:00') // until half past eleven
  await book(await job('Noon', 60), '12:30') // an hour free before it
  const asked = await job('Asked', 45)
  const gaps = async () => (await bestPlaces(firm, { jobId: asked })).places.map(({ at, lastAt }) => [at, lastAt]).sort()
  expect(await gaps()).toEqual([
    ['11:30', '11:45'],
    ['13:30', '16:15'],
  ])
  await keep({ lunchMinutes: 30, inHandMinutes: 60 })
  // Half an hour of that hour is lunch now, and the afternoon ends an hour sooner: what is left is after one, from half past one to a quarter past three.
  const [first, second] = (await bestPlaces(firm, { jobId: asked })).places
  expect([first?.at, first?.lastAt, first?.words]).toEqual(['13:30', '15:15', null])
  expect(second).toBeUndefined()
  const { fits } = await fitsWithDrives(firm, sheet)
  expect(fits.map((fit) => [fit.at, clockIn('America/Phoenix', fit.freeUntil)])).toEqual([['13:30', '16:00']])
  const [shown] = (await sheetsOfDay(firm, DAY)).sheets
  expect(shown?.breaks.map((one) => [clockIn('America/Phoenix', one.startsAt), one.fits])).toEqual([['11:30', true]])
  const week = await weekOfTowns(firm, { day: DAY, kind: 'annual-visit', minutes: 45 })
  expect(week.towns[0]?.places.map(({ from, lastStart }) => [from, lastStart])).toEqual([[810, 915]])
  const days = { fromDay: DAY, untilDay: DAY, at: new Date('2026-12-02T16:00:00Z') }
  const { board } = await inCompany(firm, (tx) => readBoard(tx, firm.companyId, days))
  expect(board.sheets).toMatchObject([{ breaks: [{ from: 690, to: 780, minutes: 30 }], inHandMinutes: 60, shift: { from: 480, to: 1020 } }])
})

test('a person’s own break goes before the firm’s', async () => {
  await keep({ lunchMinutes: 30 })
  const breaks = [{ from: '10:00', until: '10:30', minutes: 15 }]
  await inCompany(firm, (tx) => tx.colleague.updateMany({ where: { companyId: firm.companyId }, data: { breaks } }))
  const [shown] = (await sheetsOfDay(firm, DAY)).sheets
  expect(shown?.breaks.map((one) => clockIn('America/Phoenix', one.startsAt))).toEqual(['10:00'])
})

test('a public holiday is a day off for everybody, but where the firm works on it', async () => {
  // Thanksgiving 2027 is the fourth Thursday of November, the 25th (by the calendar).
  expect(publicHolidays('US', 2027)).toContainEqual({ day: '2027-11-25', name: 'Thanksgiving Day' })
  setClock(() => new Date('2027-11-22T16:00:00Z'))
  try {
    const { colleagues, vehicles } = await inCompany(firm, async (tx) => ({
      colleagues: await tx.colleague.findMany({ where: { companyId: firm.companyId } }),
      vehicles: await tx.vehicle.findMany({ where: { companyId: firm.companyId } }),
    }))
    const crew = { name: 'Ruth', colleagueIds: colleagues.map((one) => one.id), vehicleId: vehicles[0]?.id ?? null }
    const open = { ...id(), ...crew, from: '08:00', until: '17:00', day: '2027-11-25' }
    const { crewDayId } = await openDaySheet(firm, open)
    const asked = await job('Asked', 45)
    const places = async () => (await bestPlaces(firm, { jobId: asked })).places.length
    expect(await places()).toBe(1)
    const settings = { ...id(), version: 1, reminderLeadDays: 60, rebedsPerMonth: 10, dayStart: '08:00', dayEnd: '17:00', riskLimit: 0.3 }
    const costs = { plannedRebedMinor: null, failureMinor: null, beadsMinor: null, overtimeMinorPerHour: null, note: null }
    const firmSays = { ...settings, ...costs, yardLatitude: YARD.latitude, yardLongitude: YARD.longitude }
    await expect(changeSettings(firm, { ...firmSays, ...id(), holidayArea: 'Atlantis' })).rejects.toMatchObject({ code: 'invalid' })
    await changeSettings(firm, { ...firmSays, ...id(), holidayArea: 'US' })
    expect(await places()).toBe(0)
    expect(await sheetsOfDay(firm, '2027-11-25')).toMatchObject({ holiday: 'Thanksgiving Day' })
    const byHand = { ...id(), jobId: asked, jobVersion: 1, crewDayId, at: '10:00', confirmed: [] }
    await expect(bookVisit(firm, byHand)).rejects.toMatchObject({
      detail: { confirm: ['crew'] },
      message: expect.stringContaining('Thanksgiving'),
    })
    await changeSettings(firm, { ...firmSays, ...id(), version: 2, holidaysWorked: ['Thanksgiving Day'] })
    expect(await places()).toBe(1)
  } finally {
    setClock(() => new Date('2026-12-02T16:00:00Z'))
  }
})
