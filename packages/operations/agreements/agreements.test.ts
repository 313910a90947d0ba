import { closeClients } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { changeHolder } from '../customers/change-holder.ts'
import { callOffJob } from '../jobs/call-off-job.ts'
import { proposeIn } from '../jobs/propose-job.ts'
import { makeBed, makeFirm } from '../jobs/test-firm.ts'
import { addAgreement } from './add-agreement.ts'
import { endAgreement } from './end-agreement.ts'
import { agreementsOfSite } from './of-site.ts'
import { proposeTurns } from './propose-turns.ts'
import { type CapacityOf, readRounds } from './read-rounds.ts'
import { renewAgreement } from './renew-agreement.ts'
import { settleTurn } from './settle-turn.ts'

let firm: Awaited<ReturnType<typeof makeFirm>>
let place: Awaited<ReturnType<typeof makeBed>>
const command = () => ({ commandId: newId() })
const TODAY = '2026-12-02'

/** Months in which the crews have so many hours of a crew of two; a rebed takes three. */
const capacity =
  (hours: (month: string) => number): CapacityOf =>
  async (_tx, _companyId, today, _zone, count) => ({
    hoursEach: 3,
    months: Array.from({ length: count }, (_, later) => {
      const month = new Date(Date.UTC(Number(today.slice(0, 4)), Number(today.slice(5, 7)) - 1 + later, 1)).toISOString().slice(0, 7)
      return { month, crewHours: hours(month), bookedHours: 0 }
    }),
  })
const rounds = (month?: string, hours: (month: string) => number = () => 40) => readRounds(firm, { month }, capacity(hours))

const add = (more: Partial<Parameters<typeof addAgreement>[1]> = {}) =>
  addAgreement(firm, {
    ...{ ...command(), siteId: place.siteId, softenerId: null, kind: 'visits', every: { count: 1, unit: 'year' } },
    ...{ firstDay: '2026-12-15', untilDay: null, price: { minor: 18_500, per: 'year' }, notes: '' },
    ...more,
  })
const propose = (month: string, ...turns: { agreementId: string; dueDay: string }[]) =>
  proposeTurns(firm, { ...command(), month, turns }, proposeIn)
const card = async () => (await agreementsOfSite(firm, place.siteId))[0] ?? expect.unreachable()
const jobOf = (id: string) =>
  inCompany(firm, (tx) => tx.job.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id } } }))

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date(`${TODAY}T18:00:00Z`))
})
beforeEach(async () => {
  setClock(() => new Date(`${TODAY}T18:00:00Z`))
  firm = await makeFirm()
  place = await makeBed(firm)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('a month’s turns', () => {
  test('become jobs once a person approved them, each due within the month, and once only', async () => {
    const { id } = await add({ softenerId: place.softenerId, notes: 'Salt is in the shed' })
    const { due } = await rounds()
    expect(due).toMatchObject([{ agreementId: id, dueDay: '2026-12-15', kind: 'visits', standing: 'open', fits: true }])
    const turn = { agreementId: id, dueDay: '2026-12-15' }
    const [result] = (await propose('2026-12', turn, turn)).results
    if (result?.status !== 'proposed') throw new Error('not proposed')
    expect(await jobOf(result.jobId)).toMatchObject({
      ...{ kind: 'annual-visit', state: 'proposed', softenerId: place.softenerId, notes: 'Salt is in the shed' },
      ...{ dueEarliest: dateOf(TODAY), dueLatest: dateOf('2026-12-31') },
    })
    expect((await propose('2026-12', turn)).results).toMatchObject([{ status: 'refused', reason: 'A job for this turn is already open.' }])
    expect((await rounds()).due).toMatchObject([{ standing: 'under-way', job: { id: result.jobId } }])
  })

  test('are open again when their job is called off, and then get another', async () => {
    const { id } = await add()
    const turn = { agreementId: id, dueDay: '2026-12-15' }
    const [first] = (await propose('2026-12', turn)).results
    if (first?.status !== 'proposed') throw new Error('not proposed')
    await callOffJob(firm, { ...command(), jobId: first.jobId, version: 1, reason: 'rain' })
    expect((await rounds()).due).toMatchObject([{ standing: 'open', job: null }])
    expect((await propose('2026-12', turn)).results).toMatchObject([{ status: 'proposed' }])
  })

  test('of a day the rule has not, of a month that is over, or of another company make nothing', async () => {
    const { id } = await add()
    expect((await propose('2026-12', { agreementId: id, dueDay: '2026-12-16' })).results).toMatchObject([{ status: 'refused' }])
    await expect(propose('2026-11', { agreementId: id, dueDay: '2026-12-15' })).rejects.toThrow(/month is over/)
    const other = await makeFirm()
    await expect(
      proposeTurns(other, { ...command(), month: '2026-12', turns: [{ agreementId: id, dueDay: '2026-12-15' }] }, proposeIn),
    ).rejects.toMatchObject({ code: 'not-found' })
    expect(await inCompany(firm, (tx) => tx.job.count({ where: { companyId: firm.companyId } }))).toBe(0)
  })

  test('go to the month where crews are free: June is full, July has most hours', async () => {
    await add({ firstDay: '2027-06-10' })
    // Hours of a crew of two: May 1, June none, July 6, of which nothing is planned for rebeds.
    const hours = (month: string) => ({ '2027-05': 1, '2027-06': 0, '2027-07': 6 })[month] ?? 0
    const { months, due } = await rounds('2027-07', hours)
    expect(due).toMatchObject([{ dueDay: '2027-06-10', fits: true }])
    expect(months.find((one) => one.month === '2027-07')).toMatchObject({ turns: 1, freeHours: 12 })
    expect((await rounds('2027-06', hours)).due).toEqual([])
  })

  test('of salt stay in their month even if nobody has an hour, and say so', async () => {
    await add({ kind: 'salt', every: { count: 6, unit: 'week' }, firstDay: '2026-12-14' })
    const { due } = await rounds('2027-01', (month) => (month === '2027-01' ? 0 : 40))
    // Six weeks after December 14 is January 25, counted on a calendar.
    expect(due).toMatchObject([{ dueDay: '2027-01-25', fits: false }])
  })
})

describe('what was due and not done', () => {
  test('is a list until it is done or skipped with a reason; a salt delivery is late in the next month', async () => {
    const { id } = await add({ kind: 'salt', every: { count: 1, unit: 'month' }, firstDay: '2026-12-14' })
    setClock(() => new Date('2027-01-04T18:00:00Z'))
    expect((await rounds()).late).toMatchObject([{ agreementId: id, dueDay: '2026-12-14' }])
    const settle = (outcome: 'done' | 'skipped' | 'open', version: number, more = {}) =>
      settleTurn(firm, { ...command(), agreementId: id, dueDay: '2026-12-14', version, outcome, doneDay: null, reason: '', ...more })
    await expect(settle('skipped', 0)).rejects.toThrow(/Say why/)
    await expect(settle('done', 0, { doneDay: '2027-01-05' })).rejects.toThrow(/future/)
    await settle('skipped', 0, { reason: 'had salt for two months' })
    expect((await rounds()).late).toEqual([])
    await expect(settle('open', 0)).rejects.toMatchObject({ code: 'version-conflict' })
    await settle('open', 1)
    expect((await rounds()).late).toHaveLength(1)
    await settle('done', 2, { doneDay: '2027-01-03' })
    expect((await card()).turns.find((one) => one.dueDay === '2026-12-14')).toMatchObject({ standing: 'done', doneDay: '2027-01-03' })
  })

  test('leaves out what was due before it was written down', async () => {
    await add({ firstDay: '2015-03-01' })
    const { late, due } = await rounds()
    expect([late, due]).toEqual([[], []])
    expect((await card()).turns).toMatchObject([{ dueDay: '2027-03-01', standing: 'open', late: false }])
  })
})

describe('renewals', () => {
  test('that end within two months are a list with their price line; renewed, they go on by the same rule at the new price', async () => {
    const { id } = await add({ firstDay: '2026-12-15', untilDay: '2027-01-31' })
    expect((await rounds()).ending).toMatchObject([{ id, lastDay: '2027-01-31', price: { minor: 18_500, per: 'year' } }])
    const renew = (fromDay: string, version: number) =>
      renewAgreement(firm, {
        ...{ ...command(), agreementId: id, version, fromDay, untilDay: '2028-01-31', price: { minor: 19_900, per: 'year' as const } },
      })
    await expect(renew('2026-12-15', 1)).rejects.toThrow(/later day/)
    await renew('2027-02-01', 1)
    expect((await rounds()).ending).toEqual([])
    // Today the old price line counts; both are kept.
    expect(await card()).toMatchObject({
      ...{ untilDay: '2028-01-31', price: { minor: 18_500 } },
      terms: [{ fromDay: '2027-02-01', price: { minor: 19_900 } }, { fromDay: '2026-12-15' }],
    })
    setClock(() => new Date('2027-12-01T18:00:00Z'))
    expect((await rounds()).due).toMatchObject([{ dueDay: '2027-12-15' }])
    await expect(renew('2028-02-01', 1)).rejects.toMatchObject({ code: 'version-conflict' })
  })

  test('of one that a person ended are not asked for again, and its later turns are gone', async () => {
    const { id } = await add({ every: { count: 1, unit: 'month' } })
    await endAgreement(firm, { ...command(), agreementId: id, version: 1, lastDay: '2026-12-31', why: 'asked' })
    const { due, ending } = await rounds()
    expect([due.length, ending.length]).toEqual([1, 0])
    expect((await rounds('2027-01')).due).toEqual([])
    await expect(endAgreement(firm, { ...command(), agreementId: id, version: 2, lastDay: TODAY, why: 'asked' })).rejects.toThrow(
      /has ended/,
    )
  })

  test('a house that is sold ends them the day before, and the list asks about the new customer', async () => {
    const { id } = await add()
    await changeHolder(firm, {
      ...{ ...command(), siteId: place.siteId, fromDay: TODAY, tenureVersion: null },
      holder: { kind: 'new', name: 'Bo Dow', phone: '', email: '', consents: [] },
    })
    const { due, ending } = await rounds()
    expect(due).toEqual([])
    expect(ending).toMatchObject([{ id, lastDay: '2026-12-01', endWhy: 'sold', customerName: 'Bo Dow' }])
    await add()
    expect((await rounds()).ending).toEqual([])
  })
})
