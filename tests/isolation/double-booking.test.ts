import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { bookVisit } from '@almanac/operations/jobs/book-visit'
import { moveVisit } from '@almanac/operations/jobs/move-visit'
import { openDaySheet } from '@almanac/operations/jobs/open-day-sheet'
import { proposeJob } from '@almanac/operations/jobs/propose-job'
import { setClock } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from '../../packages/operations/jobs/test-firm.ts'
import { testDatabase } from '../support/test-database.ts'

/** Fewer than the pool has connections, so that all stand in the database at once and none waits at the door for a connection. */
const ATTEMPTS = 20
const id = () => ({ commandId: newId() })
const hours = { day: DAY, from: '06:00', until: '20:00' }
let firm: Firm

beforeAll(async () => {
  process.env.DATABASE_POOL = '25'
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

async function proposed(count: number): Promise<string[]> {
  const jobs = []
  for (let n = 1; n <= count; n++) {
    const { siteId, bedId } = await makeBed(firm, `Weir Road ${n}`)
    jobs.push((await proposeJob(firm, { ...id(), siteId, bedId, kind: 'rebed' })).jobId)
  }
  return jobs
}

const sheet = async (name: string, colleagueIds: string[], vehicleId: string | null, clock: { from?: string; until?: string } = {}) =>
  (await openDaySheet(firm, { ...id(), ...hours, ...clock, name, colleagueIds, vehicleId })).crewDayId

/** How each attempt ended: 'done', or the code of its refusal. Anything that is no AppError would be a 500. */
function endings(results: PromiseSettledResult<unknown>[]): string[] {
  return results.map((one) => {
    if (one.status === 'fulfilled') return 'done'
    if (!(one.reason instanceof AppError)) throw one.reason
    expect(one.reason.detail).not.toHaveProperty('busy', true)
    return `${one.reason.code} ${one.reason.status}`
  })
}

const tally = (words: string[]) =>
  Object.fromEntries([...new Set(words)].sort().map((word) => [word, words.filter((w) => w === word).length]))

describe('nobody and nothing in two places at once', () => {
  test(`of ${ATTEMPTS} jobs for the same crew at the same time one is booked and the others get a 409`, async () => {
    const people = [await makeColleague(firm, 'Ruth Ames'), await makeColleague(firm, 'Callum Orr')]
    const crewDayId = await sheet('Pair', people, await makeVehicle(firm))
    const jobs = await proposed(ATTEMPTS)
    const results = await Promise.allSettled(
      jobs.map((jobId) => bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at: '09:00', confirmed: [] })),
    )
    expect(tally(endings(results))).toEqual({ 'conflict 409': ATTEMPTS - 1, done: 1 })
    const refusals = results.flatMap((one) => (one.status === 'rejected' ? [one.reason as AppError] : []))
    // Each refusal knows who is busy: the attempts stood in line at the people's rows, none ran into the constraint or a deadlock.
    const naming = /^Callum Orr, Ruth Ames and van 2 are at Weir Road \d+ from 9:00\u00a0AM to 11:00\u00a0AM\. Nothing was changed/
    expect(refusals.filter((error) => !naming.test(error.message))).toEqual([])
    const standing = await inCompany(firm, (tx) => tx.assignment.count({ where: { companyId: firm.companyId, released: false } }))
    expect(standing).toBe(2)
  })

  test(`of ${ATTEMPTS} attempts at one job one is booked and the others see that it changed`, async () => {
    const people = [await makeColleague(firm, 'Ruth Ames'), await makeColleague(firm, 'Callum Orr')]
    const crewDayId = await sheet('Pair', people, await makeVehicle(firm))
    const [jobId = ''] = await proposed(1)
    const attempt = () => bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at: '09:00', confirmed: [] })
    const results = await Promise.allSettled(Array.from({ length: ATTEMPTS }, attempt))
    expect(tally(endings(results))).toEqual({ done: 1, 'version-conflict 409': ATTEMPTS - 1 })
  })

  test('crews that share people in a ring never deadlock, and exactly one of the three stands', async () => {
    const [a, b, c] = [await makeColleague(firm, 'Ada'), await makeColleague(firm, 'Bo'), await makeColleague(firm, 'Cy')]
    const crews: string[] = []
    // Sheets with overlapping people need hours that do not overlap; the visits then stand outside them, confirmed, all at one time.
    for (const [n, pair] of [
      [a, b],
      [b, c],
      [c, a],
    ].entries())
      crews.push(await sheet(`Ring ${n}`, pair, await makeVehicle(firm, `van ${n}`), { from: `0${n + 5}:00`, until: `0${n + 6}:00` }))
    const jobs = await proposed(30)
    const results = await Promise.allSettled(
      jobs.map((jobId, n) =>
        bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: crews[n % 3] ?? '', at: '12:00', confirmed: ['outside-hours'] }),
      ),
    )
    expect(tally(endings(results))).toEqual({ 'conflict 409': 29, done: 1 })
  })

  test('visits that swap places and new bookings at once leave nobody in two places', async () => {
    const people = [await makeColleague(firm, 'Ruth Ames'), await makeColleague(firm, 'Callum Orr')]
    const crewDayId = await sheet('Pair', people, await makeVehicle(firm))
    const [one = '', two = '', ...others] = await proposed(22)
    const book = (jobId: string, at: string) => bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at, confirmed: [] })
    const [first, second] = [await book(one, '08:00'), await book(two, '12:00')]
    const move = (visitId: string, at: string) => moveVisit(firm, { ...id(), visitId, version: 1, at, confirmed: [] })
    const results = await Promise.allSettled([
      ...others.map((jobId, n) => book(jobId, n % 2 ? '10:00' : '08:30')),
      move(first.visitId, '12:30'),
      move(second.visitId, '08:30'),
    ])
    expect(endings(results).filter((word) => word === 'done').length).toBeGreaterThanOrEqual(1)
    const rows = await inCompany(firm, (tx) =>
      tx.assignment.findMany({
        where: { companyId: firm.companyId, released: false, colleagueId: people[0] },
        orderBy: { startsAt: 'asc' },
      }),
    )
    for (const [n, row] of rows.entries()) if (n > 0) expect(row.startsAt >= (rows[n - 1]?.endsAt ?? row.startsAt)).toBe(true)
  })

  test('the database refuses by itself what the operation would have let through', async () => {
    const ruth = await makeColleague(firm, 'Ruth Ames')
    const van = await makeVehicle(firm)
    const crewDayId = await sheet('Pair', [ruth, await makeColleague(firm, 'Callum Orr')], van)
    const [first = '', second = ''] = await proposed(2)
    const booked = await bookVisit(firm, { ...id(), jobId: first, jobVersion: 1, crewDayId, at: '09:00', confirmed: [] })
    const other = await bookVisit(firm, { ...id(), jobId: second, jobVersion: 1, crewDayId, at: '12:00', confirmed: [] })
    const times = { companyId: firm.companyId, visitId: other.visitId, startsAt: booked.startsAt, endsAt: booked.endsAt }
    const refusals = await Promise.all([
      inCompany(firm, (tx) => tx.assignment.create({ data: { ...times, id: newId(), colleagueId: ruth } })).catch(
        (error: AppError) => error,
      ),
      inCompany(firm, (tx) => tx.vehicleUse.create({ data: { ...times, id: newId(), vehicleId: van } })).catch((error: AppError) => error),
    ])
    expect(refusals).toMatchObject([{ code: 'conflict' }, { code: 'conflict' }])
    const [person, vehicle] = refusals as AppError[]
    expect(person?.message).toContain('already on another visit at that time')
    expect(vehicle?.message).toContain('already out on another visit at that time')
  })
})
