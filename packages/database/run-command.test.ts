import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type FirmRecords, inspector, makeFirmRecords } from '../../tests/support/two-firms.ts'
import { expectChanged } from './changed-row.ts'
import { closeClients } from './client.ts'
import { asAppError } from './database-errors.ts'
import { inCompany } from './in-company.ts'
import { cursorOf, readCursor } from './read/page-key.ts'
import { runCommand } from './run-command.ts'

let db: pg.Client
let firm: FirmRecords

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a command', () => {
  let runs = 0
  const run = (input: { commandId: string } & Record<string, unknown>, who = firm, fails = false) =>
    runCommand(who, 'test.count', input, async (tx, command) => {
      runs++
      await tx.site.updateMany({ where: { id: who.siteId }, data: { version: { increment: 1 } } })
      await command.audit('counted', 'site', who.siteId, { by: 1 })
      if (fails) throw new AppError('conflict', 'planned')
      return { run: runs, at: new Date('2026-12-02T16:00:00Z'), left: undefined }
    })
  const version = () => inCompany(firm, async (tx) => (await tx.site.findFirst())?.version)
  const audits = () => inCompany(firm, (tx) => tx.auditEntry.findMany({ where: { operation: 'test.count: counted' } }))

  test('is applied once and answers the same to each, in the same words as the first', async () => {
    const commandId = newId()
    const first = await run({ commandId, a: 1, b: { c: [2], d: undefined } })
    expect(first).toEqual({ run: expect.any(Number), at: '2026-12-02T16:00:00.000Z' })
    expect(await run({ b: { c: [2] }, a: 1, commandId })).toEqual(first)
    expect(await version()).toBe(2)
    expect(await audits()).toMatchObject([{ commandId, personId: firm.personId, entity: 'site', entityId: firm.siteId }])
  })

  test.each([{ a: 2 }, { a: '1' }, { a: 1, b: null }, {}])('with the same id and %j instead of {"a":1} is refused', async (body) => {
    const commandId = newId()
    await run({ commandId, a: 1 })
    await expect(run({ commandId, ...body })).rejects.toMatchObject({ code: 'command-reused', status: 422 })
    expect(await version()).toBe(2)
  })

  test('of one person is not another’s', async () => {
    const commandId = newId()
    await run({ commandId })
    await expect(run({ commandId }, { ...firm, personId: newId() })).rejects.toMatchObject({ code: 'command-reused' })
  })

  test('that arrives twelve times at once is applied once', async () => {
    const commandId = newId()
    const answers = await Promise.all(Array.from({ length: 12 }, () => run({ commandId })))
    for (const answer of answers) expect(answer).toEqual(answers[0])
    expect(await version()).toBe(2)
  })

  test('that failed left nothing, and may be sent again as it was', async () => {
    const commandId = newId()
    await expect(run({ commandId }, firm, true)).rejects.toMatchObject({ code: 'conflict' })
    expect([await version(), (await audits()).length]).toEqual([1, 0])
    await expect(run({ commandId })).resolves.toBeTruthy()
  })
})

describe('what the database refuses', () => {
  const attempt = (work: Parameters<typeof inCompany>[1]) => inCompany(firm, work)
  const own = () => ({ companyId: firm.companyId, id: newId() })

  test('is a sentence about the thing, not about the constraint', async () => {
    await expect(attempt((tx) => tx.bed.create({ data: { ...own(), tankId: firm.tankId } }))).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('This tank already has a bed in service'),
    })
    const tenure = { siteId: firm.siteId, customerId: firm.otherCustomerId }
    await expect(attempt((tx) => tx.tenure.create({ data: { ...own(), ...tenure } }))).rejects.toThrow(
      'already has a customer who holds it',
    )
    await expect(attempt((tx) => tx.waterSupply.create({ data: { ...own(), name: 'Larkmoor town', kind: 'town' } }))).rejects.toMatchObject(
      {
        code: 'conflict',
        message: expect.stringContaining('exists already'),
      },
    )
    await expect(attempt((tx) => tx.softener.create({ data: { ...own(), siteId: newId(), label: 'x' } }))).rejects.toMatchObject({
      code: 'not-found',
    })
  })

  test('for the length of a lock is a conflict to try again, and the connection goes on', async () => {
    await db.query('begin')
    await db.query('select 1 from site where id = $1 for update', [firm.siteId])
    const waiting = inCompany(firm, async (tx) => {
      await tx.$executeRaw`set local lock_timeout = '100ms'`
      await tx.site.updateMany({ data: { notes: 'x' } })
    })
    await expect(waiting).rejects.toMatchObject({ code: 'conflict', detail: { busy: true } })
    await db.query('rollback')
    await expect(inCompany(firm, (tx) => tx.site.count())).resolves.toBe(1)
  })

  test('and what nobody foresaw stays what it is', () => {
    const odd = new Error('odd')
    expect(asAppError(odd)).toBe(odd)
    expect(asAppError('text')).toBe('text')
  })
})

test('an update that touched nothing is not found, or a conflict with both values', async () => {
  const row = { version: 4, label: 'theirs' }
  await expect(expectChanged(1, 'site', 3, {}, async () => row)).resolves.toBeUndefined()
  await expect(expectChanged(0, 'site', 3, {}, async () => null)).rejects.toMatchObject({ code: 'not-found' })
  await expect(expectChanged(0, 'site', 3, { label: 'mine' }, async () => row)).rejects.toMatchObject({
    code: 'version-conflict',
    status: 409,
    detail: { seenVersion: 3, currentVersion: 4, current: row, sent: { label: 'mine' } },
  })
})

describe('a list’s cursor', () => {
  const id = newId()
  test('comes back as it was', () => {
    expect(readCursor(cursorOf('Öl & "Salz"', id), 'string')).toEqual({ sort: 'Öl & "Salz"', id })
    expect(readCursor(cursorOf(0.25, id), 'number')).toEqual({ sort: 0.25, id })
  })
  test.each([
    ['of another list', cursorOf(1, id)],
    ['with a bad id', cursorOf('a', "x'; drop table site")],
    ['cut short', cursorOf('a', id).slice(0, 9)],
    ['that is no JSON', 'hello'],
    ['that is empty', ''],
  ])('%s is refused with a sentence', (_what, cursor) => {
    expect(() => readCursor(cursor, 'string')).toThrow(
      expect.objectContaining({ code: 'invalid', message: expect.stringContaining('first page') }),
    )
  })
})
