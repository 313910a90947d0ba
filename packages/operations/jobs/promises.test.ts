import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readCallBacks } from '@almanac/database/read/calls'
import { readPublicOffer } from '@almanac/database/read/window-offers'
import { lostPromises } from '@almanac/database/sql/lost-promises'
import { now, setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { bookVisit } from './book-visit.ts'
import { callOffVisit } from './call-off-visit.ts'
import { changeDaySheet } from './change-day-sheet.ts'
import { chooseWindow } from './confirm-window.ts'
import { holdJob } from './hold-job.ts'
import { missVisit } from './miss-visit.ts'
import { moveVisit } from './move-visit.ts'
import { offerWindows } from './offer-windows.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { promiseWindow } from './promise-window.ts'
import { proposeJob } from './propose-job.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { jobWithLength } from './visit-lengths.ts'

const id = () => ({ commandId: newId() })
const ALL = ['past', 'outside-hours', 'promise'] as const
let firm: Firm
let sheet: string
let crew: { name: string; colleagueIds: string[]; vehicleId: string; from: string; until: string }
let jobId: string

const owed = () => readCallBacks(firm)
const lost = () => inCompany(firm, (tx) => lostPromises(tx, firm.companyId))
const job = () => inCompany(firm, (tx) => tx.job.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: jobId } } }))
const present = () =>
  inCompany(firm, (tx) =>
    tx.visit.findFirstOrThrow({ where: { companyId: firm.companyId, jobId, state: 'booked' }, orderBy: { id: 'desc' } }),
  )
const book = async (at: string) =>
  bookVisit(firm, { ...id(), jobId, jobVersion: (await job()).version, crewDayId: sheet, at, confirmed: [...ALL] })
const takeOff = async (confirmed: ['promise'] | [] = ['promise']) => {
  const { id: visitId, version } = await present()
  return callOffVisit(firm, { ...id(), visitId, version, confirmed })
}
const move = async (at: string, confirmed: ['promise'] | [] = ['promise']) => {
  const { id: visitId, version } = await present()
  return moveVisit(firm, { ...id(), visitId, version, at, confirmed })
}
const promise = async (from: string, until: string) => {
  const { id: visitId, version } = await present()
  return promiseWindow(firm, { ...id(), visitId, version, from, until })
}

beforeAll(() => setClock(() => new Date('2026-12-02T16:00:00Z')))
beforeEach(async () => {
  firm = await makeFirm()
  crew = {
    name: 'Ruth',
    colleagueIds: [await makeColleague(firm, 'Ruth')],
    vehicleId: await makeVehicle(firm),
    from: '08:00',
    until: '17:00',
  }
  sheet = (await openDaySheet(firm, { ...id(), ...crew, day: DAY })).crewDayId
  const { siteId } = await makeBed(firm)
  jobId = (await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit' })).jobId
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('a promise by telephone', () => {
  test('is shown with who made it, and must be of a time the visit keeps', async () => {
    await book('10:00')
    await expect(promise('11:00', '13:00')).rejects.toThrow(/booked for 10:00/)
    await expect(promise('12:00', '08:00')).rejects.toThrow(/end after it begins/)
    await promise('08:00', '12:00')
    const { visits } = await jobWithLength(firm, jobId, () => 'Dana')
    expect(visits[0]?.promised).toEqual({
      ...{ from: '2026-12-03T15:00:00.000Z', until: '2026-12-03T19:00:00.000Z', by: 'phone', person: 'Dana' },
    })
  })

  test('lost with a take-off is asked first, then stands on the list; undone it is given back', async () => {
    await book('10:00')
    await promise('08:00', '12:00')
    await expect(takeOff([])).rejects.toMatchObject({ detail: { confirm: ['promise'] } })
    expect(await owed()).toEqual([])
    await takeOff()
    expect(await owed()).toMatchObject([
      { cause: 'promise', dueDay: '2026-12-02', job: { id: jobId }, promised: { from: '2026-12-03T15:00:00.000Z' } },
    ])
    await book('10:00')
    expect(await owed()).toEqual([])
    expect(await present()).toMatchObject({ promisedBy: 'phone', arriveFrom: new Date('2026-12-03T15:00:00Z') })
    expect(await lost()).toEqual([])
  })

  test('that another time does not keep stays on the list until it is kept or renewed', async () => {
    await book('10:00')
    await promise('08:00', '12:00')
    await expect(move('14:00', [])).rejects.toMatchObject({ detail: { confirm: ['promise'] } })
    await move('14:00')
    await move('15:00')
    expect(await owed()).toHaveLength(1)
    await move('11:00')
    expect(await owed()).toEqual([])
    await takeOff()
    await book('14:00')
    expect(await owed()).toHaveLength(1)
    expect((await present()).promisedBy).toBeNull()
    await promise('13:00', '15:00')
    expect(await owed()).toEqual([])
    expect(await lost()).toEqual([])
  })

  test('cut off by shorter hours puts its customer on the list', async () => {
    await book('15:00')
    await promise('14:00', '16:00')
    const shorter = { ...crew, crewDayId: sheet, version: 1, until: '14:00', notes: null }
    await expect(changeDaySheet(firm, { ...id(), ...shorter })).rejects.toMatchObject({
      detail: { confirm: ['promise'] },
      message: expect.stringMatching(/^Outside these hours: .* at .*\(promised .*\)\. Whoever was promised goes on the list to call\./),
    })
    expect(await owed()).toEqual([])
    await changeDaySheet(firm, { ...id(), ...shorter, confirmed: ['promise'] })
    expect(await owed()).toMatchObject([{ cause: 'promise', note: 'The crew’s hours were shortened.' }])
  })

  test('of a job on hold calls for nobody who knows already', async () => {
    await book('10:00')
    await promise('08:00', '12:00')
    await holdJob(firm, { ...id(), jobId, version: (await job()).version, reason: 'they are away', told: true })
    expect([await owed(), await lost()]).toEqual([[], []])
  })
})

test('a promise by the link that is lost and given back is on the customer’s page again', async () => {
  const places = [{ crewDayId: sheet, at: '10:00' }]
  const { offerId } = await offerWindows(firm, { ...id(), jobId, jobVersion: 1, windowMinutes: 120, holdHours: 4, places })
  const page = () => readPublicOffer({ companyId: firm.companyId, offerId }, now())
  await chooseWindow({ companyId: firm.companyId, offerId }, (await page())?.windows[0]?.visitId ?? '')
  expect((await present()).promisedBy).toBe('link')
  const from = (await page())?.chosen?.from
  await move('14:00')
  expect((await page())?.chosen).toBeNull()
  await takeOff()
  expect([(await page())?.chosen, (await owed()).length]).toEqual([null, 1])
  await book('10:00')
  expect([(await page())?.chosen?.from, await owed()]).toEqual([from, []])
})

test('a visit that nobody came to comes off with its call: once, today, promised or not; one still to come is not missed', async () => {
  await book('10:00')
  await promise('08:00', '12:00')
  const visit = await present()
  const miss = () => missVisit(firm, { ...id(), visitId: visit.id, version: visit.version })
  await expect(miss()).rejects.toThrow(/hasn’t come yet/)
  setClock(() => new Date('2026-12-03T20:00:00Z'))
  await miss()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
  expect(await owed()).toMatchObject([{ cause: 'missed', dueDay: DAY, job: { id: jobId } }])
  expect((await job()).state).toBe('proposed')
  expect((await jobWithLength(firm, jobId)).visits).toMatchObject([{ state: 'called-off', notes: 'We did not come.' }])
  expect(await lost()).toEqual([])
})
