import { closeClients } from '@almanac/database/client'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bestPlaces } from './best-places.ts'
import { bookVisit } from './book-visit.ts'
import { callOffJob } from './call-off-job.ts'
import { holdJob } from './hold-job.ts'
import { jobsThatFit } from './jobs-that-fit.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { proposeJobs } from './propose-jobs.ts'
import { resumeJob } from './resume-job.ts'
import { DAY, everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeForecast, makeVehicle } from './test-firm.ts'

let firm: Firm
let ruth: string
let pair: string

const id = () => ({ commandId: newId() })
const hours = { day: DAY, from: '08:00', until: '12:00' }

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  ruth = await makeColleague(firm, 'Ruth Ames')
  const colleagueIds = [ruth, await makeColleague(firm, 'Callum Orr')]
  pair = (await openDaySheet(firm, { ...id(), ...hours, name: 'Pair', colleagueIds, vehicleId: await makeVehicle(firm) })).crewDayId
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('proposing rebeds for beds', () => {
  test('takes the due window from the forecast, and length and crew from the tank', async () => {
    const small = await makeBed(firm, 'Orchard Lane 14')
    const large = await makeBed(firm, 'Mill bakery', { diameterIn: 24, heightIn: 72 })
    await makeForecast(firm, small, '2027-02-01', '2031-08-01')
    const { results } = await proposeJobs(firm, { ...id(), kind: 'rebed', beds: [large, small].map(({ bedId }) => ({ bedId })) })
    expect(results.map((one) => [one.bedId, one.status])).toEqual([
      [large.bedId, 'proposed'],
      [small.bedId, 'proposed'],
    ])
    const { jobs } = await everythingOf(firm)
    // Two people for a house; a 24 in tank is commercial work for three or four and fills the day (common practice, no source).
    expect(jobs.find((job) => job.bedId === small.bedId)).toMatchObject({
      ...{ state: 'proposed', minutes: 120, crewSize: 2, softenerId: small.softenerId, siteId: small.siteId },
      ...{ dueEarliest: new Date('2027-02-01'), dueLatest: new Date('2031-08-01') },
    })
    const big = jobs.find((job) => job.bedId === large.bedId)
    expect(big).toMatchObject({ minutes: 480, dueLatest: null })
    expect(big?.crewSize).toBeGreaterThanOrEqual(3)
  })

  test('refuses one that is open already and goes on with the others', async () => {
    const [first, second] = [await makeBed(firm, 'Orchard Lane 14'), await makeBed(firm, 'Alder Rise 3')]
    const before = await proposeJobs(firm, { ...id(), kind: 'rebed', beds: [{ bedId: first.bedId }] })
    const jobId = before.results[0]?.status === 'proposed' ? before.results[0].jobId : ''
    const again = await proposeJobs(firm, { ...id(), kind: 'rebed', beds: [{ bedId: first.bedId }, { bedId: second.bedId }] })
    expect(again.results).toMatchObject([
      { bedId: first.bedId, status: 'refused', reason: 'A rebed for this bed is already open.', jobId },
      { bedId: second.bedId, status: 'proposed' },
    ])
  })

  test('proposed by two people at once gives one job', async () => {
    const { bedId } = await makeBed(firm)
    const both = await Promise.all([1, 2].map(() => proposeJobs(firm, { ...id(), kind: 'rebed', beds: [{ bedId }] })))
    expect(both.flatMap((one) => one.results.map((result) => result.status)).sort()).toEqual(['proposed', 'refused'])
  })

  test("with a foreign firm's bed among them adds nothing at all", async () => {
    const other = await makeFirm()
    const [mine, theirs] = [await makeBed(firm), await makeBed(other)]
    const before = [await everythingOf(firm), await everythingOf(other)]
    const propose = (bedId: string) => proposeJobs(firm, { ...id(), kind: 'rebed', beds: [{ bedId: mine.bedId }, { bedId }] })
    await expect(propose(theirs.bedId)).rejects.toMatchObject({ code: 'not-found' })
    await expect(propose(newId())).rejects.toMatchObject({ code: 'not-found' })
    const one = { ...id(), kind: 'cleaning' as const }
    await expect(proposeJob(firm, { ...one, siteId: theirs.siteId })).rejects.toMatchObject({ code: 'not-found' })
    await expect(proposeJob(firm, { ...one, siteId: mine.siteId, softenerId: theirs.softenerId })).rejects.toMatchObject({
      code: 'not-found',
    })
    await expect(proposeJob(firm, { ...one, siteId: mine.siteId, bedId: theirs.bedId })).rejects.toMatchObject({ code: 'not-found' })
    expect([await everythingOf(firm), await everythingOf(other)]).toEqual(before)
    await expect(propose((await makeBed(firm, 'Alder Rise 3')).bedId)).resolves.toBeTruthy()
  })
})

describe('holding, calling off and bringing back', () => {
  const booked = async () => {
    const { siteId, bedId } = await makeBed(firm)
    const { jobId } = await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })
    await bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: pair, at: '08:00', confirmed: [] })
    return { jobId, siteId, bedId }
  }

  test('a held job leaves its day sheet, and is released to need a place', async () => {
    const { jobId } = await booked()
    const held = await holdJob(firm, { ...id(), jobId, version: 2, reason: 'waits for the landlord' })
    expect(held).toEqual({ jobId, version: 3, state: 'held' })
    const { visits, assignments, uses } = await everythingOf(firm)
    expect(visits).toMatchObject([{ state: 'called-off' }])
    expect([...assignments, ...uses].every((one) => one.released)).toBe(true)
    await expect(bookVisit(firm, { ...id(), jobId, jobVersion: 3, crewDayId: pair, at: '08:00', confirmed: [] })).rejects.toThrow(
      'This job is on hold. Take it off hold first. Nothing was changed.',
    )
    expect(await resumeJob(firm, { ...id(), jobId, version: 3 })).toEqual({ jobId, version: 4, state: 'proposed' })
    await expect(resumeJob(firm, { ...id(), jobId, version: 4 })).rejects.toMatchObject({ code: 'conflict' })
  })

  test('a called-off rebed does not come back beside a newer one', async () => {
    const { jobId, siteId, bedId } = await booked()
    await callOffJob(firm, { ...id(), jobId, version: 2, reason: 'house is being sold' })
    await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })
    const before = await everythingOf(firm)
    await expect(resumeJob(firm, { ...id(), jobId, version: 3 })).rejects.toThrow('A rebed for this bed is already open.')
    expect(await everythingOf(firm)).toEqual(before)
  })

  test('the reason, which may name a person, stays out of the audit trail', async () => {
    const { jobId } = await booked()
    const command = { ...id(), jobId, version: 2, reason: 'Mrs Example is ill' }
    const first = await holdJob(firm, command)
    expect(await holdJob(firm, command)).toEqual(first)
    const { jobs } = await everythingOf(firm)
    expect(jobs[0]?.stateReason).toBe('Mrs Example is ill')
    const { inCompany } = await import('@almanac/database/in-company')
    const audit = await inCompany(firm, (tx) => tx.auditEntry.findMany({ where: { companyId: firm.companyId } }))
    expect(audit.length).toBeGreaterThan(3)
    expect(JSON.stringify(audit)).not.toContain('Example')
  })
})

describe('places', () => {
  test('of a job are the free stretches long enough, and other sheets say why not', async () => {
    const alone = { ...hours, name: 'Joss', colleagueIds: [await makeColleague(firm, 'Joss Field')], vehicleId: null }
    await openDaySheet(firm, { ...id(), ...alone })
    const { siteId, bedId } = await makeBed(firm)
    const { jobId } = await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })
    const first = await bestPlaces(firm, { jobId: jobId })
    expect(first.places).toMatchObject([
      { crewDayId: pair, day: DAY, at: '08:00', people: ['Callum Orr', 'Ruth Ames'], addedDriveMinutes: null },
    ])
    expect(first.unfit).toMatchObject([{ crewName: 'Joss', reason: 'Needs 2 people; this sheet has one person.' }])
    await bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: pair, at: '09:00', confirmed: [] })
    const other = await makeBed(firm, 'Alder Rise 3')
    const next = await proposeJob(firm, { ...id(), siteId: other.siteId, bedId: other.bedId, kind: 'rebed' })
    const { places } = await bestPlaces(firm, { jobId: next.jobId })
    // The pair works until noon and is busy from nine to eleven: two hours only go past noon, and nobody else is moved for them.
    expect(places).toMatchObject([{ crewDayId: pair, at: '11:00', words: '60 min overtime' }])
    const third = await makeBed(firm, 'Weir Road 8')
    const long = await proposeJob(firm, { ...id(), siteId: third.siteId, bedId: third.bedId, kind: 'rebed', minutes: 300 })
    const { unfit } = await bestPlaces(firm, { jobId: long.jobId })
    expect(unfit.find((one) => one.crewDayId === pair)?.reason).toMatch(/^Pair has no 5 h free for Weir Road 8.*would make room/)
    await expect(bestPlaces(await makeFirm(), { jobId: jobId })).rejects.toMatchObject({ code: 'not-found' })
  })

  test('on a sheet go to the most pressing jobs, three in a stretch', async () => {
    const due = ['2026-12-20', '2026-12-10', '2027-05-01', '2026-12-15', '2026-12-12']
    for (const dueLatest of due) {
      const { siteId } = await makeBed(firm, `Weir Road ${dueLatest}`)
      await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit', dueLatest })
    }
    const { siteId } = await makeBed(firm, 'Not yet')
    await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit', dueEarliest: '2026-12-04', dueLatest: '2026-12-05' })
    const { fits, left } = await jobsThatFit(firm, pair)
    expect(fits.map((one) => one.dueLatest)).toEqual(['2026-12-10', '2026-12-12', '2026-12-15'])
    expect(left).toEqual([{ reason: 'Also fits, less urgent.', jobs: 3 }])
  })
})
