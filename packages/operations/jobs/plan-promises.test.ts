import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readDrivePaceRow } from '@almanac/database/read/drive-pace'
import { readPlan } from '@almanac/database/read/plan-page'
import { readJobOffer } from '@almanac/database/read/window-offers'
import { now, setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { resetFigure } from '../firm/reset-figure.ts'
import { takeDrivePace } from '../firm/take-drive-pace.ts'
import { acceptPlan } from './accept-plan.ts'
import { chooseWindow } from './confirm-window.ts'
import { offerWindows } from './offer-windows.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { startPlan } from './start-plan.ts'
import { DAY, everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { workOutPlan } from './work-out-plan.ts'

const YARD = { latitude: 41.72, longitude: -88.44 }
const id = () => ({ commandId: newId() })
let firm: Firm
let ruths: string
let adas: string

async function waiting(label: string, miles: number) {
  const { siteId, bedId } = await makeBed(firm, label)
  const place = { latitude: YARD.latitude + miles / 69.09, longitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: place }))
  return (await proposeJob(firm, { ...id(), siteId, bedId, kind: 'annual-visit', dueLatest: DAY })).jobId
}
const planned = async (asked: Parameters<typeof startPlan>[1]['asked']) => {
  const { planId } = await startPlan(firm, { ...id(), fromDay: DAY, days: 1, asked })
  await workOutPlan({ companyId: firm.companyId, planId })
  return readPlan(firm, planId)
}
const accept = ({ id: planId, version, differences }: Awaited<ReturnType<typeof planned>>) =>
  acceptPlan(firm, { ...id(), planId, version, differenceIds: differences.map((one) => one.id) })
const pace = (factor: number) => ({ factor, shortFactor: factor, longFactor: factor, roadFactor: 1, drives: 40, days: 8 })
const take = async (factor: number) =>
  takeDrivePace(firm, { ...id(), version: (await readDrivePaceRow(firm))?.version ?? 0, pace: pace(factor) })

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  const yard = { yardLatitude: YARD.latitude, yardLongitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  const crewOf = async (name: string) => {
    const crew = { name, colleagueIds: [await makeColleague(firm, name)], vehicleId: await makeVehicle(firm, `${name}’s van`) }
    return (await openDaySheet(firm, { ...id(), ...crew, from: '08:00', until: '17:00', day: DAY })).crewDayId
  }
  ruths = await crewOf('Ruth')
  adas = await crewOf('Ada')
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

test('a way round keeps what was promised, with another crew, and can be accepted', { timeout: 60_000 }, async () => {
  const jobId = await waiting('Promised', 4)
  const { offerId } = await offerWindows(firm, {
    ...{ ...id(), jobId, jobVersion: 1, windowMinutes: 120, holdHours: 12, places: [{ crewDayId: ruths, at: '11:20' }] },
  })
  const [window] = (await readJobOffer(firm, jobId, now()))?.windows ?? []
  await chooseWindow({ companyId: firm.companyId, offerId }, window?.visitId ?? '')
  const plan = await planned({ kind: 'sheet-off', crewDayId: ruths })
  expect(plan.differences.map((one) => one.kind)).toEqual(['move'])
  await accept(plan)
  const [visit] = (await everythingOf(firm)).visits.filter((one) => one.state === 'booked')
  expect(visit).toMatchObject({ crewDayId: adas, arriveFrom: new Date(window?.from ?? 0), arriveUntil: new Date(window?.until ?? 0) })
  expect(Number(visit?.startsAt)).toBeGreaterThanOrEqual(Date.parse(window?.from ?? ''))
  expect(Number(visit?.startsAt)).toBeLessThanOrEqual(Date.parse(window?.until ?? ''))
})

test('what is accepted is what was shown: with slower drives it is refused, with the times; with the same ones it stands to the minute', {
  timeout: 60_000,
}, async () => {
  await waiting('Near', 3)
  await waiting('Far', 14)
  await waiting('Farther', 22)
  await take(0.7)
  const plan = await planned({ kind: 'week' })
  expect(plan.differences).toHaveLength(3)
  await take(1.5)
  const { proposal } = await inCompany(firm, (tx) =>
    tx.planProposal.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: plan.id } } }),
  )
  const { differences } = proposal as { differences: { jobId: string; startMinute: number }[] }
  const before = await everythingOf(firm)
  await expect(accept(plan)).rejects.toMatchObject({
    code: 'conflict',
    message: expect.stringMatching(/ instead of .*make the plan again/),
  })
  expect(await everythingOf(firm)).toEqual(before)
  await take(0.7)
  await accept(plan)
  const stands = (await everythingOf(firm)).visits.filter((one) => one.state === 'booked')
  // The firm's zone is seven hours behind UTC on that day.
  const minute = (at: Date) => (at.getTime() - Date.parse(`${DAY}T07:00:00Z`)) / 60_000
  expect(stands.map((one) => [one.jobId, minute(one.startsAt)]).sort()).toEqual(
    differences.map((one) => [one.jobId, one.startMinute]).sort(),
  )
})

test('a pace is taken over with its version, said in the history, and given up again', async () => {
  await take(1.2)
  expect(await readDrivePaceRow(firm)).toEqual({ version: 1, pace: pace(1.2) })
  await expect(takeDrivePace(firm, { ...id(), version: 0, pace: pace(0.9) })).rejects.toMatchObject({ code: 'version-conflict' })
  await resetFigure(firm, { ...id(), key: 'drives:pace', version: 1, note: null })
  expect(await readDrivePaceRow(firm)).toEqual({ version: 2, pace: null })
  await take(0.9)
  expect(await readDrivePaceRow(firm)).toEqual({ version: 3, pace: pace(0.9) })
})
