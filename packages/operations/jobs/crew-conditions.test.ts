import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { bestPlaces } from './best-places.ts'
import { bookVisit } from './book-visit.ts'
import { crewChoices } from './crew-choices.ts'
import { jobsThatFit } from './jobs-that-fit.ts'
import { moveVisit } from './move-visit.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { readBoard } from './read-board.ts'
import { sheetsOfDay } from './sheets-of-day.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { jobWithLength } from './visit-lengths.ts'

const NEXT = '2026-12-04'
const command = () => ({ commandId: newId() })
// Six in the morning in Phoenix on the day the tests stand on.
beforeAll(() => setClock(() => new Date(`${DAY}T13:00:00Z`)))
afterAll(() => setClock())

async function pair(day = DAY) {
  const firm = await makeFirm()
  const people = [await makeColleague(firm, 'Ruth Ames'), await makeColleague(firm, 'Callum Orr')] as const
  const vehicleId = await makeVehicle(firm)
  const sheet = { colleagueIds: [...people], vehicleId, from: '08:00', until: '17:00', name: 'Pair one' }
  const { crewDayId } = await openDaySheet(firm, { ...command(), ...sheet, day })
  return { firm, people, vehicleId, crewDayId, sheet }
}

async function rebed(firm: Firm) {
  const { siteId, softenerId, bedId } = await makeBed(firm, 'Orchard Lane 14')
  const job = await proposeJob(firm, { ...command(), siteId, softenerId, bedId, kind: 'rebed', minutes: 120, crewSize: 2 })
  return { jobId: job.jobId, jobVersion: job.version }
}

const write = <T>(firm: Firm, work: (tx: Parameters<Parameters<typeof inCompany<T>>[1]>[0], companyId: string) => Promise<T>) =>
  inCompany(firm, (tx) => work(tx, firm.companyId))
const away = (firm: Firm, of: { colleagueId?: string; vehicleId?: string }) =>
  write(firm, (tx, companyId) =>
    tx.absence.create({
      data: { companyId, id: newId(), ...of, fromDay: new Date(DAY), untilDay: new Date(DAY), word: 'works from home' },
    }),
  )
const boardOf = (firm: Firm) =>
  write(
    firm,
    async (tx, companyId) => (await readBoard(tx, companyId, { fromDay: DAY, untilDay: NEXT, at: new Date(`${DAY}T13:00:00Z`) })).board,
  )

describe('people and vehicles on the board', () => {
  test('someone who is off does not count, and the sheet says so; a job for two no longer fits', async () => {
    const { firm, people, crewDayId } = await pair()
    const job = await rebed(firm)
    expect((await boardOf(firm)).sheets).toMatchObject([{ people: 2, skills: ['heavy lifting by two'] }])
    expect((await jobsThatFit(firm, crewDayId)).fits).toHaveLength(1)
    await away(firm, { colleagueId: people[0] })
    expect((await boardOf(firm)).sheets).toMatchObject([{ people: 1, skills: [] }])
    expect((await jobsThatFit(firm, crewDayId)).fits).toHaveLength(0)
    expect((await sheetsOfDay(firm, DAY)).sheets[0]?.warnings).toEqual(['Ruth Ames is off: works from home, until Thu, Dec 3.'])
    expect((await crewChoices(firm, DAY)).colleagues.find((one) => one.id === people[0])?.away).toBe(
      'is off: works from home, until Thu, Dec 3',
    )
    expect((await crewChoices(firm, NEXT)).colleagues.every((one) => one.away === null)).toBe(true)
    const book = { ...command(), ...job, crewDayId, at: '10:00' }
    await expect(bookVisit(firm, { ...book, confirmed: [] })).rejects.toMatchObject({
      message: expect.stringContaining('Ruth Ames is off: works from home'),
      detail: { confirm: ['crew'] },
    })
    await expect(bookVisit(firm, { ...book, ...command(), confirmed: ['crew'] })).resolves.toMatchObject({ jobId: job.jobId })
  })

  test('a vehicle off the road carries nothing', async () => {
    const { firm, vehicleId } = await pair()
    expect((await boardOf(firm)).sheets).toMatchObject([{ capacity: { ft3: 8, lb: 900 } }])
    await away(firm, { vehicleId })
    expect((await boardOf(firm)).sheets).toMatchObject([{ capacity: { ft3: 0, lb: 0 } }])
    expect((await sheetsOfDay(firm, DAY)).sheets[0]?.warnings).toEqual(['van 2 is out of service: works from home, until Thu, Dec 3.'])
  })

  test('shifts, breaks, homes and prices of overtime reach the planner', async () => {
    const { firm, people } = await pair()
    const [id] = people
    await write(firm, (tx, companyId) =>
      tx.colleague.update({
        where: { companyId_id: { companyId, id } },
        data: {
          // 3 December 2026 is a Thursday.
          ...{ shifts: [{ weekday: 4, from: '09:00', until: '15:00' }], breaks: [{ from: '11:30', until: '13:00', minutes: 30 }] },
          ...{ startsAtHome: true, homeLatitude: 33.4, homeLongitude: -112.1, overtimeMinorPerHour: 7_000 },
        },
      }),
    )
    const [sheet] = (await boardOf(firm)).sheets
    expect(sheet).toMatchObject({
      shift: { from: 540, to: 900 },
      breaks: [{ from: 690, to: 780, minutes: 30 }],
      ...{ startPlace: `home ${id}`, endPlace: `home ${id}` },
    })
    // Only one of the two has a price of their own.
    expect(sheet?.overtimePerHour).toBeUndefined()
  })

  test('who may not lift cannot be the second of two', async () => {
    const { firm, people, crewDayId } = await pair()
    await rebed(firm)
    const [, id] = people
    await write(firm, (tx, companyId) =>
      tx.colleague.update({ where: { companyId_id: { companyId, id } }, data: { doesAll: false, skills: [] } }),
    )
    expect((await jobsThatFit(firm, crewDayId)).left).toEqual([{ reason: 'This crew isn’t cleared for heavy lifting by two.', jobs: 1 }])
  })
})

describe('how long visits take', () => {
  test('is learnt from close-outs: one of twice the usual moves the next job’s length a little, and another firm’s not at all', async () => {
    const { firm, crewDayId } = await pair()
    const first = await rebed(firm)
    const { visitId } = await bookVisit(firm, { ...command(), ...first, crewDayId, at: '08:00', confirmed: [] })
    const closeOut = { startedAt: `${DAY}T15:00:00Z`, finishedAt: `${DAY}T19:00:00Z` }
    await write(firm, (tx, companyId) =>
      tx.visit.update({
        where: { companyId_id: { companyId, id: visitId } },
        data: { state: 'closed', outcome: 'done', closedAt: new Date(`${DAY}T19:00:00Z`), closeOut },
      }),
    )
    setClock(() => new Date(`${DAY}T23:00:00Z`))
    const lengthOf = async (of: Firm) => {
      const { siteId, softenerId, bedId } = await makeBed(of, 'Mill Row 2', { diameterIn: 10, heightIn: 54 })
      const { jobId } = await proposeJob(of, { ...command(), siteId, softenerId, bedId, kind: 'rebed' })
      const { minutes, usually } = await jobWithLength(of, jobId)
      expect(usually.middle).toBe(minutes)
      return { minutes, visits: usually.visits, leftOut: usually.leftOut }
    }
    // Two hours are usual for a 10 in tank; the guess counts as eight visits: 120 × 2^(1/9) = 129.6 min.
    expect(await lengthOf(firm)).toEqual({ minutes: 130, visits: 1, leftOut: 0 })
    expect(await lengthOf(await makeFirm())).toEqual({ minutes: 120, visits: 0, leftOut: 0 })
    setClock(() => new Date(`${DAY}T13:00:00Z`))
  })
})

describe('work of several visits', () => {
  test('the second waits for the first to have a day, and then for the days between; by hand it is asked about', async () => {
    const { firm, crewDayId, sheet } = await pair()
    const later = await openDaySheet(firm, { ...command(), ...sheet, day: NEXT })
    const { siteId, softenerId, bedId } = await makeBed(firm, 'Mill Row 2')
    const at = { siteId, softenerId, bedId, minutes: 60, crewSize: 1 }
    const first = await proposeJob(firm, { ...command(), ...at, kind: 'inspection' })
    const second = await proposeJob(firm, { ...command(), ...at, kind: 'delivery', after: { jobId: first.jobId, leastDays: 1 } })
    expect((await bestPlaces(firm, { jobId: second.jobId })).places).toEqual([])
    expect((await jobWithLength(firm, second.jobId)).follows).toMatchObject({ jobId: first.jobId, day: null })
    const wish = { ...command(), jobId: first.jobId, jobVersion: 1, crewDayId, at: '08:00', confirmed: [] }
    const { visitId } = await bookVisit(firm, wish)
    expect((await bestPlaces(firm, { jobId: second.jobId })).places.map((place) => place.day)).toEqual([NEXT])
    const must = 'It must come at least a day after the visit of Dec 3, 2026.'
    expect((await jobsThatFit(firm, crewDayId)).left).toEqual([{ reason: must, jobs: 1 }])
    const book = { jobId: second.jobId, jobVersion: 1, at: '10:00', confirmed: [] }
    await expect(bookVisit(firm, { ...book, ...command(), crewDayId })).rejects.toMatchObject({ detail: { confirm: ['order'] } })
    await bookVisit(firm, { ...book, ...command(), crewDayId: later.crewDayId })
    // The first is moved to the second's day: the second's sheet says so.
    await moveVisit(firm, { ...command(), visitId, version: 1, crewDayId: later.crewDayId, at: '08:00', confirmed: [] })
    const warned = (await sheetsOfDay(firm, NEXT)).sheets[0]?.visits.map((visit) => visit.warnings)
    expect(warned).toEqual([[], ['It must come at least a day after the visit of Dec 4, 2026.']])
    expect((await jobWithLength(firm, first.jobId)).followedBy).toMatchObject([{ jobId: second.jobId, leastDays: 1 }])
  })
})

describe('a site’s own hours', () => {
  test('keep proposals and places to them, and by hand are asked about first', async () => {
    const { firm, crewDayId, sheet } = await pair()
    const job = await rebed(firm)
    await openDaySheet(firm, { ...command(), ...sheet, day: NEXT })
    const set = (data: { visitWeekdays?: number[]; visitFrom?: string; visitUntil?: string }) =>
      write(firm, (tx, companyId) => tx.site.updateMany({ where: { companyId }, data }))
    // NEXT is a Friday.
    await set({ visitWeekdays: [5], visitFrom: '11:00' })
    const best = await bestPlaces(firm, { jobId: job.jobId })
    expect(best.places.map(({ day, at }) => [day, at])).toEqual([[NEXT, '11:00']])
    expect(best.unfit[0]?.reason).toMatch(/windows/)
    const takes = 'Visiting hours are Fri, from 11:00\u00a0AM.'
    expect((await jobsThatFit(firm, crewDayId)).left).toEqual([{ reason: takes, jobs: 1 }])
    const book = { ...command(), ...job, crewDayId, at: '12:00' }
    await expect(bookVisit(firm, { ...book, confirmed: [] })).rejects.toMatchObject({ detail: { confirm: ['site-hours'] } })
    await bookVisit(firm, { ...book, ...command(), confirmed: ['site-hours'] })
    expect((await sheetsOfDay(firm, DAY)).sheets[0]?.visits[0]?.warnings).toEqual([takes])
    await set({ visitWeekdays: [] })
    expect((await sheetsOfDay(firm, DAY)).sheets[0]?.visits[0]?.warnings).toEqual([])
  })
})

describe('parts', () => {
  test('that are missing put a rebed off until they can be there, and by hand are asked about first', async () => {
    const { firm, crewDayId, sheet } = await pair()
    const job = await rebed(firm)
    const later = await openDaySheet(firm, { ...command(), ...sheet, day: NEXT })
    const stock = { name: 'Resin 8%', kind: 'resin', unit: 'resin-bag', bagFt3: 1, resinKind: 'gel-8', onHand: 0, leadDays: 1 }
    const item = await write(firm, (tx, companyId) => tx.stockItem.create({ data: { companyId, id: newId(), ...stock } }))
    const [waiting] = (await boardOf(firm)).jobs
    expect(waiting).toMatchObject({ earliest: NEXT })
    expect(waiting?.earliestBecause).toMatch(/resin-bag of Resin 8% missing, there on Fri, Dec 4 if ordered today$/)
    const best = await bestPlaces(firm, { jobId: job.jobId })
    expect(best.places.map((place) => place.day)).toEqual([NEXT])
    expect(best.unfit[0]?.reason).toMatch(/may not be done before Friday, December 4: .*Resin 8% missing/)
    expect((await jobsThatFit(firm, crewDayId)).left[0]?.reason).toMatch(/^Parts: .*Resin 8%/)
    const book = { ...command(), ...job, crewDayId, at: '10:00' }
    await expect(bookVisit(firm, { ...book, confirmed: [] })).rejects.toMatchObject({ detail: { confirm: ['parts'] } })
    await bookVisit(firm, { ...book, ...command(), confirmed: ['parts'] })
    const warnings = async () => (await sheetsOfDay(firm, DAY)).sheets[0]?.visits[0]?.warnings
    expect(await warnings()).toMatchObject([expect.stringMatching(/^Parts: 0 resin-bags of Resin 8% in the stores/)])
    await write(firm, (tx, companyId) => tx.stockItem.update({ where: { companyId_id: { companyId, id: item.id } }, data: { onHand: 9 } }))
    expect(await warnings()).toEqual([])
    expect(later.version).toBe(1)
  })
})
