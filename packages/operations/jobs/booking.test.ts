import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bookVisit } from './book-visit.ts'
import { callOffVisit } from './call-off-visit.ts'
import { moveVisit } from './move-visit.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { DAY, everythingOf, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'

let firm: Firm
let ruth: string
let callum: string
let van: string
let pair: string

const id = () => ({ commandId: newId() })
const hours = { day: DAY, from: '08:00', until: '17:00' }
const rebedAt = async (label: string, who = firm) => {
  const { siteId, bedId } = await makeBed(who, label)
  return (await proposeJob(who, { ...id(), siteId, bedId, kind: 'rebed' })).jobId
}
const book = (jobId: string, at: string, more: Partial<Parameters<typeof bookVisit>[1]> = {}) =>
  bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId: pair, at, confirmed: [], ...more })

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  ruth = await makeColleague(firm, 'Ruth Ames')
  callum = await makeColleague(firm, 'Callum Orr')
  van = await makeVehicle(firm)
  pair = (await openDaySheet(firm, { ...id(), ...hours, name: 'Ruth & Callum', colleagueIds: [ruth, callum], vehicleId: van })).crewDayId
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('booking a job', () => {
  test('puts a visit on the sheet for its people and vehicle, in the zone of the company', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    const booked = await book(jobId, '08:05')
    // Phoenix is UTC-7 all year; a 10 in tank is planned with two hours.
    expect(booked).toMatchObject({ startsAt: '2026-12-03T15:05:00.000Z', endsAt: '2026-12-03T17:05:00.000Z', jobVersion: 2 })
    const { assignments, uses, visits, jobs } = await everythingOf(firm)
    expect(assignments.map((one) => one.colleagueId).sort()).toEqual([ruth, callum].sort())
    expect(uses.map((one) => one.vehicleId)).toEqual([van])
    expect(visits).toMatchObject([{ state: 'booked', crewDayId: pair, jobId }])
    expect(jobs).toMatchObject([{ state: 'booked', version: 2 }])
  })

  test('asks for the reminders to be looked at, in the same transaction, once while one waits', async () => {
    await inCompany(firm, (tx) => tx.$executeRaw`delete from queue.job where data->>'companyId' = ${firm.companyId}`)
    const [first, second] = [await rebedAt('Orchard Lane 14'), await rebedAt('Alder Rise 3')]
    await book(first, '08:00')
    await book(second, '10:30')
    expect((await everythingOf(firm)).tasks).toBe(1)
  })

  test('is refused with who is busy where and when, and leaves nothing behind', async () => {
    await book(await rebedAt('Orchard Lane 14'), '08:00')
    const second = await rebedAt('Alder Rise 3')
    const before = await everythingOf(firm)
    await expect(book(second, '09:30')).rejects.toMatchObject({
      code: 'conflict',
      message:
        'Callum Orr, Ruth Ames and van 2 are at Orchard Lane 14 from 8:00\u00a0AM to 10:00\u00a0AM. Nothing was changed; choose another time or crew.',
    })
    expect(await everythingOf(firm)).toEqual(before)
    await expect(book(second, '10:00')).resolves.toMatchObject({ version: 1 })
  })

  test('finds a person busy on another sheet too', async () => {
    const other = await makeVehicle(firm, 'van 3')
    const early = { day: DAY, from: '05:00', until: '08:00', name: 'Ruth early', colleagueIds: [ruth], vehicleId: other }
    const alone = (await openDaySheet(firm, { ...id(), ...early })).crewDayId
    const { siteId } = await makeBed(firm, 'Weir Road 8')
    const visit = await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit' })
    await book(visit.jobId, '07:45', { crewDayId: alone, confirmed: ['outside-hours'] })
    await expect(book(await rebedAt('Orchard Lane 14'), '08:00')).rejects.toThrow(
      'Ruth Ames is at Weir Road 8 from 7:45\u00a0AM to 8:30\u00a0AM.',
    )
  })

  test('needs as many people as the job and a vehicle for the material', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    const joss = await makeColleague(firm, 'Joss Field')
    const petra = await makeColleague(firm, 'Petra Lind')
    const alone = await openDaySheet(firm, { ...id(), ...hours, name: 'Joss', colleagueIds: [joss], vehicleId: null })
    await expect(book(jobId, '08:00', { crewDayId: alone.crewDayId })).rejects.toThrow('Needs 2 people; this sheet has one person.')
    const late = { ...hours, name: 'On foot', colleagueIds: [petra, await makeColleague(firm, 'Ines Roca')], vehicleId: null }
    const onFoot = await openDaySheet(firm, { ...id(), ...late })
    await expect(book(jobId, '08:00', { crewDayId: onFoot.crewDayId })).rejects.toThrow('Needs a vehicle for the material')
    await expect(book(jobId, '08:00')).resolves.toBeTruthy()
  })

  test('outside the hours or in the past asks to confirm, and then stands', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    await expect(book(jobId, '16:00')).rejects.toMatchObject({ code: 'conflict', detail: { confirm: ['outside-hours'] } })
    await expect(book(jobId, '16:00')).rejects.toThrow(
      'from 4:00\u00a0PM to 6:00\u00a0PM, but this crew works from 8:00\u00a0AM to 5:00\u00a0PM',
    )
    setClock(() => new Date('2026-12-03T20:00:00Z'))
    await expect(book(jobId, '08:00')).rejects.toMatchObject({ detail: { confirm: ['past'] } })
    await expect(book(jobId, '16:00', { confirmed: ['outside-hours'] })).resolves.toBeTruthy()
    setClock(() => new Date('2026-12-02T16:00:00Z'))
  })

  test('sent twice applies once; the same id with another time is refused', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    const command = id()
    const first = await book(jobId, '08:00', command)
    expect(await book(jobId, '08:00', command)).toEqual(first)
    expect((await everythingOf(firm)).visits).toHaveLength(1)
    await expect(book(jobId, '11:00', command)).rejects.toMatchObject({ code: 'command-reused', status: 422 })
  })

  test('of a job that someone else changed is a conflict with both values', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    await book(jobId, '08:00')
    await expect(book(jobId, '11:00')).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { seenVersion: 1, currentVersion: 2, current: { state: 'booked' }, sent: { at: '11:00' } },
    })
  })

  test('that has a visit already is refused with a sentence, and its kit is spoken for once', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    const { companyId } = firm
    await inCompany(firm, (tx) =>
      tx.stockItem.create({
        data: { companyId, id: newId(), name: 'Resin 8 %, 1 ft³', kind: 'resin', unit: 'bag', resinKind: 'gel-8', bagFt3: 1, onHand: 9 },
      }),
    )
    const first = await book(jobId, '08:00')
    const before = await everythingOf(firm)
    const spoken = () => inCompany(firm, (tx) => tx.kitReservation.count({ where: { state: 'reserved' } }))
    expect(await spoken()).toBe(1)
    await expect(book(jobId, '13:00', { jobVersion: first.jobVersion })).rejects.toMatchObject({
      code: 'conflict',
      message: 'This job already has a visit on a day sheet. Move that visit, or take it off first. Nothing was changed.',
    })
    expect(await everythingOf(firm)).toEqual(before)
    expect(await spoken()).toBe(1)
    // Past the use cases the database itself refuses it.
    const second = {
      companyId,
      id: newId(),
      jobId,
      crewDayId: pair,
      startsAt: new Date(`${DAY}T20:00:00Z`),
      endsAt: new Date(`${DAY}T22:00:00Z`),
    }
    for (const state of ['booked', 'under-way'])
      await expect(inCompany(firm, (tx) => tx.visit.create({ data: { ...second, state } }))).rejects.toThrow(
        'already has a visit that is still to come',
      )
    await inCompany(firm, (tx) => tx.visit.create({ data: { ...second, state: 'called-off' } }))
    // Called off it may be booked again: a job may need several attempts, one after another.
    await callOffVisit(firm, { ...id(), visitId: first.visitId, version: 1 })
    await expect(book(jobId, '13:00', { jobVersion: 3 })).resolves.toBeTruthy()
  })

  test('forty times at once, each as a screen would that saw the job as it is: one stands, the others are told', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    const answers = await Promise.allSettled(
      Array.from({ length: 40 }, (_, i) => book(jobId, i % 2 ? '08:00' : '13:00', { jobVersion: 1 + (i % 3) })),
    )
    const refused = answers.flatMap((one) => (one.status === 'rejected' ? [(one.reason as { status?: number; code: string }).status] : []))
    expect(refused).toEqual(Array(39).fill(409))
    expect((await everythingOf(firm)).visits).toHaveLength(1)
  })

  test("a foreign firm's job or sheet is answered like one that does not exist, and nothing changes on either side", async () => {
    const other = await makeFirm()
    const theirJob = await rebedAt('Harbour View', other)
    const people = [await makeColleague(other, 'Nils Berg'), await makeColleague(other, 'Ola Dahl')]
    const theirs = await openDaySheet(other, { ...id(), ...hours, name: 'Pair', colleagueIds: people, vehicleId: await makeVehicle(other) })
    const jobId = await rebedAt('Orchard Lane 14')
    const before = [await everythingOf(firm), await everythingOf(other)]
    const answers = async (jobIds: string[], sheets: string[]) => {
      const said = []
      for (const job of jobIds) said.push(await book(job, '08:00').catch((error: Error) => error))
      for (const sheet of sheets) said.push(await book(jobId, '08:00', { crewDayId: sheet }).catch((error: Error) => error))
      return said.map((error) => ({ ...(error as object), message: (error as Error).message }))
    }
    const [foreignJob, noJob] = await answers([theirJob, newId()], [])
    const [foreignSheet, noSheet] = await answers([], [theirs.crewDayId, newId()])
    expect(foreignJob).toMatchObject({ code: 'not-found' })
    expect(foreignJob).toEqual(noJob)
    expect(foreignSheet).toMatchObject({ code: 'not-found' })
    expect(foreignSheet).toEqual(noSheet)
    expect([await everythingOf(firm), await everythingOf(other)]).toEqual(before)
    await expect(book(jobId, '08:00')).resolves.toBeTruthy()
  })
})

describe('moving and calling off a visit', () => {
  test('moves in time over its own old place, and frees what it leaves', async () => {
    const first = await book(await rebedAt('Orchard Lane 14'), '08:00')
    const moved = await moveVisit(firm, { ...id(), visitId: first.visitId, version: 1, at: '09:00', confirmed: [] })
    expect(moved).toMatchObject({ startsAt: '2026-12-03T16:00:00.000Z', version: 2 })
    await expect(book(await rebedAt('Alder Rise 3'), '10:30')).rejects.toThrow('from 9:00\u00a0AM to 11:00\u00a0AM')
    const standing = (await everythingOf(firm)).assignments.filter((one) => !one.released)
    expect(standing).toHaveLength(2)
  })

  test('a move that does not go leaves the visit where it was', async () => {
    const first = await book(await rebedAt('Orchard Lane 14'), '08:00')
    await book(await rebedAt('Alder Rise 3'), '10:30')
    const before = await everythingOf(firm)
    const move = { ...id(), visitId: first.visitId, version: 1, at: '10:00', confirmed: [] }
    await expect(moveVisit(firm, move)).rejects.toMatchObject({ code: 'conflict' })
    await expect(moveVisit(firm, { ...move, version: 7 })).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { currentVersion: 1 },
    })
    await expect(moveVisit(firm, { ...move, visitId: newId() })).rejects.toMatchObject({ code: 'not-found' })
    expect(await everythingOf(firm)).toEqual(before)
  })

  test('a visit called off gives its time back and the job needs a place again', async () => {
    const jobId = await rebedAt('Orchard Lane 14')
    const first = await book(jobId, '08:00')
    const off = await callOffVisit(firm, { ...id(), visitId: first.visitId, version: 1 })
    expect(off).toMatchObject({ state: 'proposed', jobVersion: 3 })
    await expect(book(await rebedAt('Alder Rise 3'), '08:00')).resolves.toBeTruthy()
    await expect(callOffVisit(firm, { ...id(), visitId: first.visitId, version: 2 })).rejects.toThrow('Only a visit that hasn’t started')
  })
})
