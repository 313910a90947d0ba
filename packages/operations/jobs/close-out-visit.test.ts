import type { CloseOutInput } from '@almanac/contract/visits'
import { closeClients } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { TABLES } from '@almanac/database/tables'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { readClosed, rebedRecord } from '../../../tests/support/close-out.ts'
import { DAY } from '../../../tests/support/records.ts'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { closeOutVisit } from './close-out-visit.ts'

let db: pg.Client
let firm: FirmRecords

const rebed = (more: Partial<CloseOutInput> = {}) => rebedRecord(firm, more)
const close = (record: CloseOutInput, commandId = newId()) => closeOutVisit(firm, { commandId, record })
const read = () => readClosed(firm)
const tasks = async () =>
  (await db.query<{ name: string }>(`select name from queue.job where data->>'companyId' = $1 order by 1`, [firm.companyId])).rows
const state = () => fingerprint(db, TABLES.tenant, [firm.companyId])

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(`${DAY}T20:00:00Z`))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('amounts that cannot be, or are unusual', () => {
  const bed = (more: Partial<NonNullable<CloseOutInput['newBed']>>) =>
    rebed({ newBed: { ...rebed().newBed, ...more } as CloseOutInput['newBed'] })
  const measured = (value: number, why?: string) =>
    rebed({ measurements: [...rebed().measurements, { kind: 'rawHardnessGpg', value, enteredValue: value, enteredUnit: 'gpg', why }] })

  // A 10 × 54 in tank holds 0.92 × π/4 × 10² × 54 in³ = 3,902 in³ = 2.26 ft³.
  test.each([
    [
      '15 ft³ in a 10 × 54',
      () => bed({ volumeFt3: 15, why: { volume: 'the crew says so' } }),
      /That much resin does not fit in a 10 × 54 in tank/,
    ],
    ['1.9 ft³ in a 10 × 54', () => bed({ volumeFt3: 1.9 }), /little room to backwash/],
    ['a tube of 62 in', () => bed({ tubeCutIn: 62 }), /A tube this long stands above a 10 × 54 in tank/],
    ['99,999 gpg', () => measured(99_999, 'insisted'), /99,999 gpg can’t be right/],
    ['99 gpg', () => measured(99), /99 gpg is unusual/],
    [
      'an outlet harder than raw',
      () =>
        rebed({
          measurements: [...measured(3).measurements, { kind: 'outletHardnessGpg', value: 19, enteredValue: 19, enteredUnit: 'gpg' }],
          hardnessReason: 'iron-in-sample',
        }),
      /harder than before the softener/,
    ],
    [
      'a million bags',
      () => rebed({ partsUsed: [{ stockItemId: null, name: 'Resin', quantity: 2e6, unit: 'bag' }] }),
      /Resin: A quantity of 2,000,000 bag can’t be right/,
    ],
  ])('%s is refused, and nothing is changed', async (_, record, sentence) => {
    const before = await state()
    await expect(close(record())).rejects.toMatchObject({ code: 'invalid', message: expect.stringMatching(sentence) })
    expect(await state()).toEqual(before)
  })

  test('what is unusual stands with its reason, kept beside the fact', async () => {
    const record = {
      ...bed({ tubeCutIn: 62, why: { tubeCut: 'the tank is a 10 × 62' } }),
      measurements: measured(99, 'brackish well').measurements,
    }
    await close(record)
    const { beds, tests } = await read()
    expect(beds[1]).toMatchObject({ tubeCutIn: 62, entered: { tubeCut: { value: 62, unit: 'in', why: 'the tank is a 10 × 62' } } })
    expect(tests.find((one) => one.point === 'raw')?.entered).toEqual({ hardness: { value: 99, unit: 'gpg', why: 'brackish well' } })
  })
})

test('what the outlet may still hold is your company’s own value', async () => {
  const at = (value: number) =>
    rebed({ measurements: [{ kind: 'outletHardnessGpg', value, enteredValue: value, enteredUnit: 'gpg' }], hardnessReason: '' })
  await expect(close(at(1.5))).rejects.toMatchObject({ message: expect.stringContaining('it should be below 1 gpg') })
  await inCompany(firm, (tx) =>
    tx.firmFigure.create({ data: { companyId: firm.companyId, id: newId(), key: 'outlet-limit-gpg', value: 2 } }),
  )
  await expect(close(at(2.5))).rejects.toMatchObject({ message: expect.stringContaining('it should be below 2 gpg') })
  expect(await close(at(1.5))).toMatchObject({ jobState: 'closed' })
})

describe('a rebed that is done', () => {
  test('ends the old bed with its cause, begins the new one, closes visit and job, and asks for forecasts and reminders', async () => {
    const answer = await close(rebed())
    const { beds, job, visit, tests, movements, item } = await read()
    expect(answer).toEqual({ visitId: firm.rebedVisitId, jobState: 'closed', endedBedId: firm.rebedBedId, newBedId: beds[1]?.id })
    expect(beds[0]).toMatchObject({ id: firm.rebedBedId, endCause: 'worn', endedVisitId: firm.rebedVisitId, resinKind: 'gel-8' })
    expect(dayOf(beds[0]?.endedLatest ?? null)).toBe(DAY)
    expect(beds[1]).toMatchObject({ resinKind: 'gel-10', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: 53.5, beganVisitId: firm.rebedVisitId })
    expect(beds[1]).toMatchObject({ endedLatest: null, endCause: null, entered: { volume: { value: 42.5, unit: 'L' } } })
    expect([dayOf(beds[1]?.beganEarliest ?? null), dayOf(beds[1]?.lastSeenDay ?? null)]).toEqual([DAY, DAY])
    expect(job).toMatchObject({ state: 'closed', closedDay: dateOf(DAY) })
    expect(visit).toMatchObject({ state: 'closed', outcome: 'done', closedBy: firm.personId, closeOut: { workDay: DAY } })
    expect(tests).toMatchObject([{ point: 'softened', hardnessGpg: 0.5, siteId: firm.siteId }])
    expect(movements).toMatchObject([{ quantity: -2, reason: 'used' }])
    expect(item?.onHand).toBe(4)
    expect(await tasks()).toEqual([{ name: 'forecast-beds' }, { name: 'raise-reminders' }])
  })

  test('sent twice applies once; the same id with another record is refused', async () => {
    const commandId = newId()
    const first = await close(rebed(), commandId)
    const after = await state()
    expect(await close(rebed(), commandId)).toEqual(first)
    await expect(close(rebed({ notes: 'second thoughts' }), commandId)).rejects.toMatchObject({ status: 422 })
    await expect(close(rebed())).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('closed out already') })
    expect(await state()).toEqual(after)
  })

  test('of several tablets at the same moment one stands, the others are told', async () => {
    const answers = await Promise.allSettled(Array.from({ length: 6 }, () => close(rebed())))
    const refused = answers.flatMap((one) => (one.status === 'rejected' ? [(one.reason as { code: string }).code] : []))
    expect(refused).toEqual(Array(5).fill('conflict'))
    const { beds, movements } = await read()
    expect([beds.length, movements.length]).toEqual([2, 1])
  })

  test('that lacks something is refused with the list, and nothing changes', async () => {
    const before = await state()
    const record = rebed({ checks: [], oldBed: { takenOut: true, endCause: null, evidence: '' } })
    await expect(close(record)).rejects.toMatchObject({
      code: 'invalid',
      detail: {
        missing: expect.arrayContaining(['Check that the bypass was proven to hold.', expect.stringContaining('why the old bed ended')]),
      },
    })
    await expect(close(rebed({ jobKind: 'cleaning' }))).rejects.toThrow('another kind of job')
    await expect(close(rebed({ workDay: '2026-12-04' }))).rejects.toThrow('that day hasn’t come')
    await expect(close(rebed({ workDay: '2026-11-01' }))).rejects.toThrow('the job was first recorded on Nov 2, 2026')
    expect(await state()).toEqual(before)
    // A bed cannot end before it began, however long the job has been known.
    await inCompany(firm, (tx) => tx.job.updateMany({ data: { createdAt: new Date('2010-01-01T16:00:00Z') } }))
    const known = await state()
    await expect(close(rebed({ workDay: '2013-05-01' }))).rejects.toThrow('can’t have ended on May 1, 2013')
    expect(await state()).toEqual(known)
  })

  test('begun before midnight and sent after it is of the day of the work, in the zone of the firm', async () => {
    // Chicago keeps UTC−6 in December: its 3rd ends at 06:00 UTC on the 4th.
    setClock(() => new Date('2026-12-04T06:40:00Z'))
    const times = { startedAt: '2026-12-04T04:00:00.000Z', finishedAt: '2026-12-04T06:20:00.000Z' }
    await expect(close(rebed({ ...times, workDay: '2026-12-05' }))).rejects.toThrow('that day hasn’t come')
    await close(rebed({ ...times, workDay: DAY }))
    setClock(() => new Date(`${DAY}T20:00:00Z`))
    const { beds, job, tests } = await read()
    expect([beds[0]?.endedLatest, beds[1]?.beganEarliest, job?.closedDay, tests[0]?.day]).toEqual(Array(4).fill(dateOf(DAY)))
  })

  test('closed the next morning keeps the day of the work', async () => {
    setClock(() => new Date('2026-12-04T15:00:00Z'))
    await close(rebed({ workDay: DAY }))
    setClock(() => new Date(`${DAY}T20:00:00Z`))
    expect((await read()).job?.closedDay).toEqual(dateOf(DAY))
  })

  test.each([
    ['old-beads', 'iron-fouled', 'iron-fouled'],
    ['old-beads', 'resin-missing', 'resin-missing'],
    ['old-beads', 'mushy', 'mushy'],
    ['beads', 'some-soft', 'some-soft'],
    // As a tablet sends it that began the visit before there was one set of words.
    ['old-beads', 'short', 'resin-missing'],
    ['old-beads', 'iron', 'iron-fouled'],
  ])('keeps what was seen of the beads: %s %s', async (stepId, note, kept) => {
    await close(rebed({ checks: [...rebed().checks, { stepId, confirmed: false, note }] }))
    const seen = await inCompany(firm, (tx) => tx.inspection.findMany({ where: { visitId: firm.rebedVisitId } }))
    expect(seen).toMatchObject([{ bedId: firm.rebedBedId, beadCondition: kept }])
  })

  test('uses what it used, though the shelf held less: the shelf goes to nothing and the difference is opened', async () => {
    await close(rebed({ partsUsed: [{ stockItemId: firm.stockItemId, name: 'Resin 10%', quantity: 8, unit: 'resin-bag' }] }))
    const { item, movements, gaps } = await read()
    expect(item?.onHand).toBe(0)
    expect(movements).toMatchObject([{ quantity: -8 }])
    expect(gaps).toMatchObject([{ expected: 6, found: 8, settledAt: null, movementId: movements[0]?.id }])
  })

  test('of a visit that the office called off is refused', async () => {
    await inCompany(firm, (tx) => tx.visit.updateMany({ where: { id: firm.rebedVisitId }, data: { state: 'called-off' } }))
    await expect(close(rebed())).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('called this visit off') })
  })
})

test('ids of another firm are answered like ids of nothing, and nothing changes on either side', async () => {
  const other = await makeFirmRecords(db)
  const both = () => fingerprint(db, TABLES.tenant, [firm.companyId, other.companyId])
  const before = await both()
  const said = (more: Partial<CloseOutInput>) => close(rebed(more)).catch((error: Error & { code: string }) => [error.code, error.message])
  const parts = (stockItemId: string) => ({ partsUsed: [{ stockItemId, name: 'Resin', quantity: 1, unit: 'resin-bag' }] })
  expect(await said({ visitId: other.rebedVisitId })).toEqual(await said({ visitId: newId() }))
  expect(await said(parts(other.stockItemId))).toEqual(await said(parts(newId())))
  expect(await said(parts(newId()))).toEqual(['not-found', expect.any(String)])
  expect(await both()).toEqual(before)
  await expect(close(rebed())).resolves.toBeTruthy()
})
