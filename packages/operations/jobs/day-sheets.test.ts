import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readDaySheets } from '@almanac/database/read/day-sheets'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bookVisit } from './book-visit.ts'
import { changeDaySheet } from './change-day-sheet.ts'
import { copyDaySheets } from './copy-day-sheets.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { DAY, everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'

const id = () => ({ commandId: newId() })
let firm: Firm
let ruth: string
let callum: string
let van: string

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-10-20T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm('America/Chicago')
  ruth = await makeColleague(firm, 'Ruth Ames')
  callum = await makeColleague(firm, 'Callum Orr')
  van = await makeVehicle(firm)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

const open = (day: string, more: Partial<Parameters<typeof openDaySheet>[1]> = {}) =>
  openDaySheet(firm, { ...id(), day, name: 'Pair', colleagueIds: [ruth, callum], vehicleId: van, from: '08:00', until: '17:00', ...more })

const bookAt = async (crewDayId: string, at: string) => {
  const { siteId, bedId } = await makeBed(firm)
  const { jobId } = await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })
  return bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at, confirmed: [] })
}

describe('opening a sheet', () => {
  test('refuses a person, a vehicle or a name that is taken at those hours, and allows other hours', async () => {
    await open(DAY)
    const joss = await makeColleague(firm, 'Joss Field')
    await expect(open(DAY, { name: 'pair', colleagueIds: [joss], vehicleId: null })).rejects.toThrow('a sheet named Pair on that day')
    await expect(open(DAY, { name: 'B', colleagueIds: [joss, ruth], vehicleId: null })).rejects.toThrow('Ruth Ames is on the sheet Pair')
    await expect(open(DAY, { name: 'B', colleagueIds: [joss] })).rejects.toThrow('van 2 is on the sheet Pair')
    await expect(open(DAY, { name: 'B', from: '17:00', until: '20:00' })).resolves.toMatchObject({ version: 1 })
    await expect(open(DAY, { name: 'C', from: '12:00', until: '12:00' })).rejects.toThrow('end before it begins')
  })

  test('by two dispatchers at once with the same people opens one', async () => {
    const both = await Promise.allSettled([open(DAY, { name: 'A' }), open(DAY, { name: 'B' })])
    expect(both.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected'])
    expect(both.find((one) => one.status === 'rejected')).toMatchObject({ reason: { code: 'conflict' } })
  })

  test("a foreign firm's people and vehicles are not there, and nothing is opened", async () => {
    const other = await makeFirm()
    const before = await everythingOf(firm)
    const theirs = [await makeColleague(other, 'Nils Berg'), newId()]
    for (const stranger of theirs)
      await expect(open(DAY, { colleagueIds: [ruth, stranger] })).rejects.toMatchObject({ code: 'not-found', message: /person/ })
    for (const vehicleId of [await makeVehicle(other), newId()])
      await expect(open(DAY, { vehicleId })).rejects.toMatchObject({ code: 'not-found', message: /vehicle/ })
    expect(await everythingOf(firm)).toEqual(before)
  })
})

describe('days when the clocks change', () => {
  // America/Chicago leaves daylight time on 1 November 2026 at 02:00 and enters it on 14 March 2027 at 02:00 (US Energy Policy Act of 2005).
  test('a sheet copied over the change keeps its clock hours', async () => {
    await open('2026-10-30')
    const copied = await copyDaySheets(firm, { ...id(), day: '2026-11-02' })
    expect(copied).toMatchObject({ fromDay: '2026-10-30', opened: [{ version: 1 }], left: [] })
    const { sheets } = await readDaySheets(firm, '2026-11-02')
    expect(sheets).toMatchObject([{ startsAt: '2026-11-02T14:00:00.000Z', endsAt: '2026-11-02T23:00:00.000Z' }])
    const before = await readDaySheets(firm, '2026-10-30')
    expect(before.sheets).toMatchObject([{ startsAt: '2026-10-30T13:00:00.000Z', endsAt: '2026-10-30T22:00:00.000Z' }])
  })

  test('on the day itself a visit lasts its minutes of work, and the day has an hour more', async () => {
    const { crewDayId } = await open('2026-11-01', { from: '00:00', until: '08:00' })
    // 00:30 is still daylight time (UTC-5); two hours of work later the clock shows 01:30, standard time (UTC-6).
    expect(await bookAt(crewDayId, '00:30')).toMatchObject({ startsAt: '2026-11-01T05:30:00.000Z', endsAt: '2026-11-01T07:30:00.000Z' })
    const [sheet] = (await readDaySheets(firm, '2026-11-01')).sheets
    expect([sheet?.startsAt, sheet?.endsAt]).toEqual(['2026-11-01T05:00:00.000Z', '2026-11-01T14:00:00.000Z'])
  })

  test('a time that the clock jumps over becomes the first one after', async () => {
    const { crewDayId } = await open('2027-03-14', { from: '00:00', until: '08:00' })
    // 02:30 does not exist; an hour's jump makes it 03:30 daylight time, UTC-5.
    expect(await bookAt(crewDayId, '02:30')).toMatchObject({ startsAt: '2027-03-14T08:30:00.000Z' })
  })
})

describe('copying the previous day', () => {
  test('leaves out what clashes and names it; sent twice it opens once', async () => {
    const last = await open('2026-11-05')
    const joss = await makeColleague(firm, 'Joss Field')
    await open('2026-11-05', { name: 'Joss', colleagueIds: [joss], vehicleId: null })
    await open('2026-11-06', { name: 'Other pair' })
    const command = { ...id(), day: '2026-11-06' }
    const answer = await copyDaySheets(firm, command)
    expect(answer.left).toEqual([{ crewDayId: last.crewDayId, reason: 'person' }])
    expect(answer.opened).toHaveLength(1)
    expect(await copyDaySheets(firm, command)).toEqual(answer)
    expect((await readDaySheets(firm, '2026-11-06')).sheets.map((one) => one.name)).toEqual(['Joss', 'Other pair'])
    await expect(copyDaySheets(await makeFirm(), { ...id(), day: DAY })).rejects.toThrow('no earlier day with sheets')
  })
})

describe('changing a sheet', () => {
  const change = (crewDayId: string, more: Partial<Parameters<typeof changeDaySheet>[1]> = {}) =>
    changeDaySheet(firm, {
      ...{ ...id(), crewDayId, version: 1, name: 'Pair', colleagueIds: [ruth, callum], vehicleId: van },
      ...{ from: '08:00', until: '17:00', notes: null, ...more },
    })

  test('hands its booked visits to the new crew and frees the old', async () => {
    const { crewDayId } = await open(DAY)
    const visit = await bookAt(crewDayId, '09:00')
    const [joss, petra] = [await makeColleague(firm, 'Joss Field'), await makeColleague(firm, 'Petra Lind')]
    expect(await change(crewDayId, { colleagueIds: [ruth, joss] })).toEqual({ crewDayId, version: 2 })
    const standing = await inCompany(firm, (tx) =>
      tx.assignment.findMany({ where: { companyId: firm.companyId, visitId: visit.visitId, released: false } }),
    )
    expect(standing.map((one) => one.colleagueId).sort()).toEqual([ruth, joss].sort())
    const other = await open(DAY, { name: 'Callum', colleagueIds: [callum, petra], vehicleId: await makeVehicle(firm, 'van 3') })
    await expect(bookAt(other.crewDayId, '09:00')).resolves.toBeTruthy()
  })

  test('to a crew too small for a booked visit is refused', async () => {
    const { crewDayId } = await open(DAY)
    await bookAt(crewDayId, '09:00')
    const before = await everythingOf(firm)
    await expect(change(crewDayId, { colleagueIds: [ruth] })).rejects.toThrow('Orchard Lane 14: Needs 2 people; this sheet has one person.')
    await expect(change(crewDayId, { vehicleId: null })).rejects.toThrow('Needs a vehicle')
    expect(await everythingOf(firm)).toEqual(before)
  })

  test('to people who may not do a booked visit asks first, and names it', async () => {
    const { crewDayId } = await open(DAY)
    await bookAt(crewDayId, '09:00')
    const light = await makeColleague(firm, 'Joss Field')
    await inCompany(firm, (tx) =>
      tx.colleague.update({ where: { companyId_id: { companyId: firm.companyId, id: light } }, data: { doesAll: false, skills: [] } }),
    )
    const before = await everythingOf(firm)
    await expect(change(crewDayId, { colleagueIds: [ruth, light] })).rejects.toMatchObject({
      message: expect.stringMatching(
        /^Orchard Lane 14 at 9:00\sAM: This crew isn’t cleared for heavy lifting by two\. Nothing was changed\./,
      ),
      detail: { confirm: ['crew'] },
    })
    expect(await everythingOf(firm)).toEqual(before)
    await expect(change(crewDayId, { colleagueIds: [ruth, light], confirmed: ['crew'] })).resolves.toMatchObject({ version: 2 })
  })

  test('that someone else changed is a conflict with both values', async () => {
    const { crewDayId } = await open(DAY)
    await change(crewDayId, { until: '16:00' })
    await expect(change(crewDayId, { until: '18:00' })).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { current: { until: '16:00', version: 2 }, sent: { until: '18:00' } },
    })
    await expect(change(newId())).rejects.toMatchObject({ code: 'not-found' })
  })
})
