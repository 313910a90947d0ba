import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readPlan } from '@almanac/database/read/plan-page'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { acceptPlan } from './accept-plan.ts'
import { bookVisit } from './book-visit.ts'
import { moveVisit } from './move-visit.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { startPlan } from './start-plan.ts'
import { stopPlan } from './stop-plan.ts'
import { DAY, everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { workOutPlan } from './work-out-plan.ts'

const NEXT_DAY = '2026-12-04'
const id = () => ({ commandId: newId() })
let firm: Firm
let first: string
let second: string

/** Some miles north of the yard. */
const north = (miles: number) => ({ latitude: 41.72 + miles / 69.09, longitude: -88.44 })

async function waiting(label: string, miles: number, kind: 'annual-visit' | 'rebed' = 'annual-visit') {
  const { siteId, bedId } = await makeBed(firm, label)
  await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: north(miles) }))
  return (await proposeJob(firm, { ...id(), siteId, bedId, kind, dueLatest: DAY })).jobId
}
const planned = async (asked: Parameters<typeof startPlan>[1]['asked'] = { kind: 'week' }) => {
  const { planId } = await startPlan(firm, { ...id(), fromDay: DAY, days: 2, asked })
  await workOutPlan({ companyId: firm.companyId, planId })
  return readPlan(firm, planId)
}
const accept = (plan: { id: string; version: number }, differenceIds: string[]) =>
  acceptPlan(firm, { ...id(), planId: plan.id, version: plan.version, differenceIds })
const stands = async () => (await everythingOf(firm)).visits.filter((one) => one.state === 'booked')

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  const yard = { yardLatitude: 41.72, yardLongitude: -88.44 }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  const pair = async (names: string[], van: string, day: string) => {
    const colleagueIds = await Promise.all(names.map((name) => makeColleague(firm, name)))
    const crew = { name: names.join(' & '), colleagueIds, vehicleId: await makeVehicle(firm, van), from: '08:00', until: '17:00' }
    return (await openDaySheet(firm, { ...id(), ...crew, day })).crewDayId
  }
  first = await pair(['Ruth', 'Callum'], 'van 1', DAY)
  second = await pair(['Ada', 'Bo'], 'van 2', NEXT_DAY)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('a plan for the days ahead', { timeout: 60_000 }, () => {
  test('places what waits, changes nothing until it is accepted, and then stands as proposed', async () => {
    const jobs = [await waiting('Near', 2), await waiting('Far', 12), await waiting('Rebed', 6, 'rebed')]
    const before = await everythingOf(firm)
    const plan = await planned()
    expect(plan).toMatchObject({ state: 'ready', waiting: [], before: { planned: 0, waiting: 3 }, after: { planned: 3, waiting: 0 } })
    expect(plan.differences.map((one) => one.id).sort()).toEqual([...jobs].sort())
    // Names are put in when it is read; the stored plan has none.
    expect(plan.differences.some((one) => one.sentence.includes('Book Far: Ruth & Callum'))).toBe(true)
    const stored = await inCompany(firm, (tx) => tx.planProposal.findMany({ where: { companyId: firm.companyId } }))
    expect(JSON.stringify(stored)).not.toContain('Ruth')
    expect((await everythingOf(firm)).visits).toEqual(before.visits)
    expect(await accept(plan, jobs)).toMatchObject({ changed: 3 })
    const visits = await stands()
    expect(visits.map((one) => one.jobId).sort()).toEqual([...jobs].sort())
    expect((await everythingOf(firm)).jobs.every((one) => one.state === 'booked')).toBe(true)
    expect(await readPlan(firm, plan.id)).toMatchObject({ state: 'accepted' })
  })

  test('may be accepted in part; what was left stays open and is taken later', async () => {
    const [near, far] = [await waiting('Near', 2), await waiting('Far', 12)]
    const plan = await planned()
    expect(await accept(plan, [near])).toMatchObject({ changed: 1 })
    expect((await stands()).map((one) => one.jobId)).toEqual([near])
    const left = await readPlan(firm, plan.id)
    expect(left).toMatchObject({ state: 'ready', taken: 1, differences: [{ id: far }] })
    await expect(accept(plan, [far])).rejects.toMatchObject({ code: 'version-conflict' })
    expect(await accept(left, [far])).toMatchObject({ changed: 1 })
    expect(await readPlan(firm, plan.id)).toMatchObject({ state: 'accepted', taken: 2, differences: [] })
    const written = new Map((await stands()).map((one) => [one.jobId, one.startsAt.toISOString()]))
    const { proposal } = await inCompany(firm, (tx) =>
      tx.planProposal.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: plan.id } } }),
    )
    // Both stand on the minute that the plan showed; the firm is seven hours behind UTC.
    const spots = new Map((proposal as { spots: [string, { startMinute: number }][] }).spots)
    const shown = (jobId: string) => new Date(Date.parse(`${DAY}T07:00:00Z`) + (spots.get(jobId)?.startMinute ?? 0) * 60_000).toISOString()
    expect([written.get(near), written.get(far)]).toEqual([shown(near), shown(far)])
  })

  test('stands beside what a colleague booked meanwhile, which keeps its time; what is in the way is refused by name', async () => {
    const [near, far, third] = [await waiting('Near', 2), await waiting('Far', 12), await waiting('Third', 4)]
    await inCompany(firm, (tx) =>
      tx.job.update({ where: { companyId_id: { companyId: firm.companyId, id: third } }, data: { state: 'held' } }),
    )
    const plan = await planned()
    expect(plan.differences.map((one) => one.crew)).toEqual(['Ruth & Callum', 'Ruth & Callum'])
    await inCompany(firm, (tx) =>
      tx.job.update({ where: { companyId_id: { companyId: firm.companyId, id: third } }, data: { state: 'proposed' } }),
    )
    const book = (at: string) => bookVisit(firm, { ...id(), jobId: third, jobVersion: 1, crewDayId: first, at, confirmed: ['drive'] })
    const { visitId, version } = await book('08:15')
    const before = await everythingOf(firm)
    await expect(accept(plan, [near, far])).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('Nothing was changed'),
    })
    expect(await everythingOf(firm)).toEqual(before)
    const moved = { ...id(), visitId, version, crewDayId: first, at: '15:30', confirmed: [] }
    await moveVisit(firm, moved)
    expect(await accept(plan, [near, far])).toMatchObject({ changed: 2 })
    const [stayed] = (await stands()).filter((one) => one.jobId === third)
    expect(stayed?.startsAt.toISOString()).toBe(`${DAY}T22:30:00.000Z`)
  })

  test('is refused once what was chosen is not what it was, by its name, and nothing is written', async () => {
    const [near, far] = [await waiting('Near', 2), await waiting('Far', 12)]
    const plan = await planned()
    await bookVisit(firm, { ...id(), jobId: far, jobVersion: 1, crewDayId: second, at: '09:00', confirmed: [] })
    const before = await everythingOf(firm)
    await expect(accept(plan, [near, far])).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringMatching(/^Far has changed since this plan was made/),
    })
    expect(await everythingOf(firm)).toEqual(before)
    await expect(acceptPlan(await makeFirm(), { ...id(), planId: plan.id, version: 1, differenceIds: [near] })).rejects.toMatchObject({
      code: 'not-found',
    })
    expect(await accept(plan, [near])).toMatchObject({ changed: 1 })
  })

  test('that was stopped is not written over by what the search found meanwhile', async () => {
    await waiting('Near', 2)
    const { planId } = await startPlan(firm, { ...id(), fromDay: DAY, days: 2, asked: { kind: 'week' } })
    await stopPlan(firm, { ...id(), planId, version: 1 })
    await workOutPlan({ companyId: firm.companyId, planId })
    expect(await readPlan(firm, planId)).toMatchObject({ state: 'stopped', differences: [] })
  })
})

test('a crew’s day that falls away finds its visits another place, and only them', { timeout: 60_000 }, async () => {
  const [one, other] = [await waiting('Near', 2), await waiting('Elsewhere', 4)]
  const book = (jobId: string, crewDayId: string, at: string) =>
    bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at, confirmed: [] })
  const stranded = await book(one, first, '10:00')
  await book(other, second, '10:00')
  const plan = await planned({ kind: 'sheet-off', crewDayId: first })
  expect(plan.state).toBe('ready')
  expect(plan.differences.map((change) => [change.id, change.kind])).toEqual([[stranded.visitId, 'move']])
  await accept(plan, [stranded.visitId])
  expect((await stands()).map((visit) => visit.crewDayId)).toEqual([second, second])
})

describe('when people or the vehicle are missing', { timeout: 60_000 }, () => {
  const book = (jobId: string, at: string) => bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: first, at, confirmed: [] })
  const crewOf = async (crewDayId: string) => {
    const where = { companyId_id: { companyId: firm.companyId, id: crewDayId } }
    const sheet = await inCompany(firm, (tx) =>
      tx.crewDay.findUniqueOrThrow({ where, include: { vehicle: true, members: { include: { colleague: true } } } }),
    )
    return { people: sheet.members.map((one) => one.colleague.name), ids: sheet.members.map((one) => one.colleagueId), van: sheet.vehicle }
  }
  const assigned = (visitId: string) =>
    inCompany(firm, (tx) =>
      tx.assignment.findMany({ where: { companyId: firm.companyId, visitId, released: false }, include: { colleague: true } }),
    )
  const memberNamed = async (name: string) => {
    const { people, ids } = await crewOf(first)
    return ids[people.indexOf(name)] as string
  }

  test('what needs two goes elsewhere, the rest stays with whoever is left, and the missing is off the sheet', async () => {
    const rebed = await book(await waiting('Rebed', 3, 'rebed'), '08:30')
    const visit = await book(await waiting('Near', 2), '13:00')
    const plan = await planned({ kind: 'fewer-people', crewDayId: first, missingIds: [await memberNamed('Ruth')] })
    expect(plan.differences.map((change) => change.id)).toEqual([rebed.visitId])
    await accept(plan, [rebed.visitId])
    expect((await crewOf(first)).people).toEqual(['Callum'])
    expect((await assigned(visit.visitId)).map((one) => one.colleague.name)).toEqual(['Callum'])
    expect((await assigned(rebed.visitId)).map((one) => one.colleague.name).sort()).toEqual(['Ada', 'Bo'])
  })

  test('it matters who is missing: what only one of them may do goes, too', async () => {
    const ruth = await memberNamed('Ruth')
    const callum = await memberNamed('Callum')
    // Callum lifts and does light work; an installation asks for a plumbing license.
    await inCompany(firm, (tx) =>
      tx.colleague.update({
        where: { companyId_id: { companyId: firm.companyId, id: callum } },
        data: { doesAll: false, skills: ['lifting'] },
      }),
    )
    const { siteId } = await makeBed(firm, 'Licence')
    await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: north(4) }))
    const { jobId } = await proposeJob(firm, { ...id(), siteId, kind: 'installation', dueLatest: DAY })
    await inCompany(firm, (tx) =>
      tx.job.update({ where: { companyId_id: { companyId: firm.companyId, id: jobId } }, data: { crewSize: 1 } }),
    )
    const { visitId } = await book(jobId, '10:00')
    const without = async (missing: string) =>
      (await planned({ kind: 'fewer-people', crewDayId: first, missingIds: [missing] })).differences.map((one) => one.id)
    expect(await without(callum)).toEqual([])
    expect(await without(ruth)).toEqual([visitId])
  })

  test('a plan that moves no visit still puts the other vehicle on the sheet; one for the week needs a change', async () => {
    const visit = await book(await waiting('Near', 2), '10:00')
    const spare = await makeVehicle(firm, 'spare van')
    const plan = await planned({ kind: 'other-vehicle', crewDayId: first, vehicleId: spare })
    expect(plan.differences).toEqual([])
    expect(await accept(plan, [])).toMatchObject({ changed: 0 })
    expect((await crewOf(first)).van?.name).toBe('spare van')
    const uses = await inCompany(firm, (tx) =>
      tx.vehicleUse.findMany({ where: { companyId: firm.companyId, visitId: visit.visitId, released: false } }),
    )
    expect(uses.map((one) => one.vehicleId)).toEqual([spare])
    await waiting('Far', 12)
    const week = await planned()
    await expect(accept(week, [])).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('nothing was changed') })
  })

  test('a plan of before people were named, counting them, still opens and changes no crew', async () => {
    const { planId } = await startPlan(firm, { ...id(), fromDay: DAY, days: 2, asked: { kind: 'sheet-off', crewDayId: first } })
    await inCompany(firm, (tx) =>
      tx.planProposal.update({
        where: { companyId_id: { companyId: firm.companyId, id: planId } },
        data: { kind: 'fewer-people', asked: { kind: 'fewer-people', crewDayId: first, people: 1 } },
      }),
    )
    await workOutPlan({ companyId: firm.companyId, planId })
    const plan = await readPlan(firm, planId)
    expect(plan).toMatchObject({ state: 'ready', differences: [] })
    await accept(plan, [])
    expect((await crewOf(first)).people).toEqual(['Ruth', 'Callum'])
  })

  test('someone of another sheet is not found, naming nobody is refused, and a sheet without anyone is no smaller crew', async () => {
    const ask = (missingIds: string[]) =>
      startPlan(firm, { ...id(), fromDay: DAY, days: 2, asked: { kind: 'fewer-people', crewDayId: first, missingIds } })
    await expect(ask([(await crewOf(second)).ids[0] as string])).rejects.toMatchObject({ code: 'not-found' })
    await expect(ask([])).rejects.toMatchObject({ code: 'invalid' })
    await expect(ask((await crewOf(first)).ids)).rejects.toMatchObject({ code: 'conflict' })
  })
})
