import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { attempt } from '@almanac/database/sql/field-queue'
import { setClock } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterSending, resume, toSend } from '@almanac/service-rules/field/outbox'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { rebedRecord } from '../../../tests/support/close-out.ts'
import { noAccess, type Sending, TestTablet } from '../../../tests/support/field-queue.ts'
import { DAY } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { settleSetAside } from './settle-set-aside.ts'

let db: pg.Client
let firm: FirmRecords
let tablet: TestTablet

const start = () => tablet.write('start', { visitId: firm.visitId })
const undoStart = () => tablet.write('undo-start', { visitId: firm.visitId })
const closeOut = (record = noAccess(firm.visitId, 'annual-visit', DAY)) => tablet.write('close-out', { record })
const next = () => toSend(tablet.outbox) as Sending
const as = (command: object): Sending => ({ ...(command as Sending), oldest: next().oldest })
const visit = (id = firm.visitId) => inCompany(firm, (tx) => tx.visit.findFirstOrThrow({ where: { id } }))
const job = (id: string) => inCompany(firm, (tx) => tx.job.findFirstOrThrow({ where: { id } }))
/** What the office reads, beside the row that each firm has. */
const aside = () => inCompany(firm, (tx) => tx.setAside.findMany({ where: { id: { not: firm.asideId } }, orderBy: { receivedAt: 'asc' } }))
const applied = () =>
  inCompany(firm, (tx) => tx.appliedCommand.findMany({ where: { queueId: tablet.outbox.queueId }, orderBy: { sequence: 'asc' } }))
const audits = (operation: string) => inCompany(firm, (tx) => tx.auditEntry.count({ where: { operation } }))
const callOff = (visitId: string, jobId: string) =>
  inCompany(firm, async (tx) => {
    await tx.visit.updateMany({ where: { id: visitId }, data: { state: 'called-off' } })
    await tx.job.updateMany({ where: { id: jobId }, data: { state: 'proposed' } })
  })

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  setClock(() => new Date(`${DAY}T20:00:00Z`))
  firm = await makeFirmRecords(db)
  tablet = new TestTablet(firm)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('the table of docs/field-protocol.md', () => {
  test('lost answer', async () => {
    start()
    await tablet.ask(next())
    expect(await tablet.sendAll()).toEqual(['taken'])
    expect(await audits('jobs.take-field-command: started')).toBe(1)
    expect(await applied()).toHaveLength(1)
  })

  test('duplicate', async () => {
    closeOut()
    const one = next()
    const answers = await Promise.all([tablet.ask(one), tablet.ask(one), tablet.ask({ ...one, oldest: 1 }, `${DAY}T21:00:00.000Z`)])
    expect(answers).toEqual(Array(3).fill({ result: 'taken' }))
    expect(await audits('jobs.take-field-command: closed out')).toBe(1)
    expect(await applied()).toHaveLength(1)
  })

  test('gap', async () => {
    start()
    const second = undoStart()
    expect(await tablet.ask(as(second))).toEqual({ result: 'send-first', expects: 1 })
    expect([(await visit()).state, await applied(), await aside()]).toEqual(['booked', [], []])
  })

  test('a number that never comes', async () => {
    start()
    undoStart()
    closeOut()
    // The tablet's store lost the first two.
    tablet.outbox = { ...tablet.outbox, waiting: tablet.outbox.waiting.slice(2) }
    expect(await tablet.sendAll()).toEqual(['taken'])
    expect((await visit()).state).toBe('closed')
    expect(await aside()).toMatchObject([
      { kind: 'lost', content: { from: 1, until: 2 }, reason: '2 entries of this tablet never arrived.' },
    ])
  })

  test('reorder', async () => {
    start()
    undoStart()
    const [first, second] = tablet.outbox.waiting.map(as)
    expect(await tablet.ask(second as Sending)).toEqual({ result: 'send-first', expects: 1 })
    expect(await tablet.ask(first as Sending)).toEqual({ result: 'taken' })
    expect((await visit()).state).toBe('under-way')
    expect(await tablet.ask(second as Sending)).toEqual({ result: 'taken' })
    expect((await visit()).state).toBe('booked')
    expect((await applied()).map((one) => one.sequence)).toEqual([1, 2])
  })

  test('a refusal in the middle', async () => {
    const incomplete = { ...rebedRecord(firm), checks: [] }
    start()
    closeOut(incomplete)
    closeOut()
    expect(await tablet.sendAll()).toEqual(['taken', 'set-aside', 'taken'])
    expect([(await visit()).state, (await visit(firm.rebedVisitId)).state]).toEqual(['closed', 'under-way'])
    expect(await aside()).toMatchObject([
      {
        kind: 'refused',
        command: 'close-out',
        visitId: firm.rebedVisitId,
        content: { record: incomplete },
        reason: expect.stringContaining('not complete'),
      },
    ])
    expect(tablet.outbox.told).toMatchObject([{ siteLabel: 'Orchard Lane 14', reason: expect.stringContaining('not complete') }])
  })

  test('a number used twice', async () => {
    start()
    await tablet.send()
    const again = { ...as(closeOut()), sequence: 1, oldest: 1 }
    expect(await tablet.ask(again)).toMatchObject({ result: 'set-aside' })
    expect((await visit()).state).toBe('under-way')
    expect(await aside()).toMatchObject([{ kind: 'refused', content: again.body, sequence: 1 }])
  })

  test('clock jump', async () => {
    // The tablet's clock is two days ahead, and was a year behind for the one before.
    setClock(() => new Date('2025-12-03T20:00:00Z'))
    start()
    setClock(() => new Date(`${DAY}T20:00:00Z`))
    const ahead = noAccess(firm.visitId, 'annual-visit', '2026-12-05')
    closeOut(ahead)
    await tablet.send()
    expect((await visit()).state).toBe('under-way')
    expect(await tablet.ask(next(), '2026-12-05T20:00:00.000Z')).toMatchObject({ result: 'set-aside' })
    expect(await aside()).toMatchObject([{ kind: 'refused', clockAheadMinutes: 2880, content: { record: ahead } }])
  })

  test('a clock in the year 9899', async () => {
    tablet.write('photograph', { visitId: firm.visitId })
    expect(await tablet.ask(next(), '9899-12-31T23:59:59.999Z')).toMatchObject({ result: 'set-aside' })
    expect(await aside()).toMatchObject([{ clockAheadMinutes: 52_596_000 }])
  })

  test('app upgrade with a full queue', async () => {
    start()
    const newer = tablet.write('close-out', { visitId: firm.visitId, pages: ['as a later app writes it'] }, 2)
    const other = tablet.write('photograph', { visitId: firm.visitId })
    closeOut()
    expect(await tablet.sendAll()).toEqual(['taken', 'set-aside', 'set-aside', 'taken'])
    expect((await visit()).state).toBe('closed')
    expect(await aside()).toMatchObject([
      { kind: 'unreadable', content: newer.body, visitId: firm.visitId },
      { kind: 'unreadable', content: other.body, command: 'photograph' },
    ])
  })

  test('expired sign-in', async () => {
    start()
    closeOut()
    const held = afterSending(tablet.outbox, next(), { result: 'failed', code: 'unauthenticated' })
    expect([held.halt, held.waiting.length, toSend(held)]).toEqual(['sign-in', 2, null])
    tablet.outbox = resume(held)
    expect(await tablet.sendAll()).toEqual(['taken', 'taken'])
    expect((await visit()).state).toBe('closed')
  })

  test('job reassigned', async () => {
    await inCompany(firm, (tx) =>
      tx.assignment.updateMany({ where: { visitId: firm.visitId }, data: { colleagueId: firm.otherColleagueId } }),
    )
    start()
    closeOut()
    expect(await tablet.sendAll()).toEqual(['taken', 'taken'])
    expect((await visit()).outcome).toBe('no-access')
    expect(await aside()).toMatchObject([{ kind: 'landed', visitId: firm.visitId, reason: expect.stringContaining('Another crew') }])
  })

  test('visit called off', async () => {
    await callOff(firm.rebedVisitId, firm.rebedJobId)
    // The office booked the job again meanwhile, for another day.
    const again = newId()
    const { crewDayId } = await visit()
    const span = { startsAt: new Date(`${DAY}T22:00:00Z`), endsAt: new Date(`${DAY}T23:00:00Z`) }
    await inCompany(firm, async (tx) => {
      await tx.visit.create({ data: { companyId: firm.companyId, id: again, jobId: firm.rebedJobId, crewDayId, state: 'booked', ...span } })
      await tx.job.updateMany({ where: { id: firm.rebedJobId }, data: { state: 'booked' } })
    })
    tablet.write('start', { visitId: firm.rebedVisitId })
    const record = rebedRecord(firm)
    closeOut(record)
    expect(await tablet.sendAll()).toEqual(['set-aside', 'taken'])
    expect([(await visit(firm.rebedVisitId)).state, (await visit(again)).state, (await job(firm.rebedJobId)).state]).toEqual([
      'closed',
      'called-off',
      'closed',
    ])
    const beds = await inCompany(firm, (tx) => tx.bed.findMany({ where: { tankId: firm.rebedTankId }, orderBy: { beganLatest: 'asc' } }))
    expect(beds).toMatchObject([{ endCause: 'worn' }, { resinKind: 'gel-10', endedLatest: null }])
    expect(await aside()).toMatchObject([
      { kind: 'refused', command: 'start' },
      { kind: 'landed', command: 'close-out', content: { record } },
    ])
  })

  test('visit closed already', async () => {
    closeOut()
    await tablet.sendAll()
    const second = new TestTablet(firm)
    second.write('start', { visitId: firm.visitId })
    second.write('close-out', { record: noAccess(firm.visitId, 'annual-visit', DAY) })
    // That the second began too changes nothing, and loses nothing.
    expect(await second.sendAll()).toEqual(['taken', 'set-aside'])
    expect(await aside()).toMatchObject([{ kind: 'refused', reason: expect.stringContaining('closed out already') }])
  })

  test('a second device', async () => {
    closeOut()
    await tablet.sendAll()
    const second = new TestTablet(firm)
    second.write('entries', { visitId: firm.visitId, entries: { 'Raw water hardness': '18 gpg' } })
    expect(await second.sendAll()).toEqual(['set-aside'])
    expect(await aside()).toMatchObject([
      { kind: 'refused', visitId: firm.visitId, command: 'entries', content: { entries: { 'Raw water hardness': '18 gpg' } } },
    ])
    expect((await visit()).outcome).toBe('no-access')
  })

  test('a failure of the server’s own', async () => {
    const may = (error: Error) => inCompany(firm, (tx) => attempt(tx, () => Promise.reject(error)))
    await expect(may(new AppError('unavailable', 'The database is away.'))).rejects.toMatchObject({ code: 'unavailable' })
    await expect(may(new AppError('conflict', 'Someone was quicker.', { busy: true }))).rejects.toMatchObject({ code: 'conflict' })
    expect(await may(new AppError('conflict', 'Closed.'))).toMatchObject({ refused: { code: 'conflict' } })
    expect(await may(new TypeError('no such thing'))).toMatchObject({ refused: expect.any(TypeError) })
    start()
    const failed = afterSending(tablet.outbox, next(), { result: 'failed', code: 'unavailable' })
    expect([failed.waiting.length, failed.tries, toSend(failed)?.sequence]).toEqual([1, 1, 1])
  })
})

test('what a refused close-out had begun is taken back: no bed, no test, no part of it', async () => {
  await callOff(firm.rebedVisitId, firm.rebedJobId)
  // Another crew is at the job by now, which shows only after beds, tests and parts were written.
  await inCompany(firm, (tx) => tx.job.updateMany({ where: { id: firm.rebedJobId }, data: { state: 'under-way' } }))
  closeOut(rebedRecord(firm))
  expect(await tablet.sendAll()).toEqual(['set-aside'])
  const where = { visitId: firm.rebedVisitId }
  const left = await inCompany(firm, async (tx) => [
    await tx.bed.count({ where: { tankId: firm.rebedTankId } }),
    await tx.movement.count({ where }),
    await tx.waterTest.count({ where }),
  ])
  expect(left).toEqual([1, 0, 0])
  expect(await aside()).toMatchObject([{ kind: 'refused', reason: expect.stringContaining('Another crew') }])
})

test('of another person or company nothing is taken, and nothing told', async () => {
  const other = await makeFirmRecords(db)
  const stranger = new TestTablet(other)
  stranger.write('close-out', { record: noAccess(firm.visitId, 'annual-visit', DAY) })
  expect(await stranger.sendAll()).toEqual(['set-aside'])
  expect([(await visit()).state, await aside()]).toEqual(['booked', []])
  // The same queue and command under another person is a queue of its own.
  start()
  const colleague = new TestTablet({ ...firm, personId: newId() })
  colleague.outbox = tablet.outbox
  await tablet.send()
  await expect(colleague.send()).rejects.toMatchObject({ code: 'command-reused' })
})

test('the office settles an entry once, and its content stays', async () => {
  closeOut({ ...rebedRecord(firm), checks: [] })
  await tablet.sendAll()
  const [row] = await aside()
  const settle = () => settleSetAside(firm, { commandId: newId(), asideId: row?.id ?? '', version: 1 })
  await settle()
  await expect(settle()).rejects.toMatchObject({ code: 'version-conflict' })
  expect(await aside()).toMatchObject([{ content: row?.content, settledBy: firm.personId }])
})
