import type { ChangeFigureInput } from '@almanac/contract/firm'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readFigureHistory, readFirmFigures } from '@almanac/database/read/firm-figures'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { NOW } from '../../../tests/support/records.ts'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { proposeJob } from '../jobs/propose-job.ts'
import { type Firm, makeBed, makeFirm } from '../jobs/test-firm.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { changeFigure } from './change-figure.ts'
import { resetFigure } from './reset-figure.ts'

let firm: Firm

const set = (key: string, value: ChangeFigureInput['value'], version = 0, note: string | null = null, of = firm) =>
  changeFigure(of, { commandId: newId(), key, version, value, note })
const reset = (key: string, version: number) => resetFigure(firm, { commandId: newId(), key, version, note: null })
const inForce = (of = firm) => inCompany(of, (tx) => firmFigures(tx, of.companyId))
const history = (more: { key?: string; cursor?: string; limit?: number } = {}) =>
  readFigureHistory(firm, { limit: 50, ...more }, (id) => (id === firm.personId ? 'Marta' : null))

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date(NOW))
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('a figure of the firm’s own', () => {
  test('takes the usual one’s place, with who, what it was before and why', async () => {
    expect((await inForce()).gravelFromFt3).toBe(1.5)
    await set('gravel-from-ft3', 2, 0, 'our tubes have fine baskets')
    await set('gravel-from-ft3', 2.5, 1)
    expect((await inForce()).gravelFromFt3).toBe(2.5)
    expect(await readFirmFigures(firm)).toMatchObject([{ key: 'gravel-from-ft3', value: 2.5, version: 2, inUse: true }])
    expect((await history()).rows).toMatchObject([
      { field: 'gravel-from-ft3', from: 2, to: 2.5, who: 'Marta', note: null },
      { field: 'gravel-from-ft3', from: null, to: 2, who: 'Marta', note: 'our tubes have fine baskets' },
    ])
  })

  test('that cannot stand is refused with a sentence, and nothing is written', async () => {
    await set('allowance:iron', 5)
    await expect(set('allowance:iron', 900, 1)).rejects.toMatchObject({
      code: 'invalid',
      message: 'An iron allowance of 900 is outside 0 to 20 gpg per mg/L. Nothing was saved; the value is unchanged.',
    })
    await expect(set('iron', 3)).rejects.toMatchObject({ code: 'invalid' })
    await expect(set('bags', { kind: 'days', days: 1 })).rejects.toMatchObject({ code: 'invalid' })
    expect(await readFirmFigures(firm)).toMatchObject([{ key: 'allowance:iron', value: 5, version: 1 }])
    expect((await history()).rows).toHaveLength(1)
  })

  test('that is a price: an unusual one is asked back by its usual pack, and stands with a reason; an impossible one never', async () => {
    // $99,999 for 1,000 gallons, in cents a gallon; $0.50 for a 40 lb bag, in cents a pound. Bounds: common practice, no source.
    await expect(set('price:water-per-gal', 9999.9)).rejects.toMatchObject({ code: 'invalid', detail: { impossible: true } })
    const dear = set('price:water-per-gal', 25)
    await expect(dear).rejects.toMatchObject({
      message: expect.stringContaining('250 USD is unusual'),
      detail: { field: 'value', odd: true },
    })
    await expect(set('price:salt-per-lb', 1.25)).rejects.toMatchObject({ detail: { odd: true } })
    await set('price:water-per-gal', 25, 0, 'brought by truck')
    await set('price:salt-per-lb', 15)
    expect(await inForce()).toMatchObject({ waterPriceMinorPerGal: 25, saltPriceMinorPerLb: 15 })
  })

  test('changed by two who saw the same version: the second is told both values', async () => {
    await set('reserve', { kind: 'days', days: 2 })
    await set('reserve', { kind: 'share', share: 0.25 }, 1)
    await expect(set('reserve', { kind: 'days', days: 3 }, 1, 'longer holidays')).rejects.toMatchObject({
      code: 'version-conflict',
      detail: {
        currentVersion: 2,
        current: { value: { kind: 'share', share: 0.25 } },
        sent: { value: { kind: 'days', days: 3 }, note: 'longer holidays' },
      },
    })
    expect((await inForce()).reserve).toEqual({ kind: 'share', share: 0.25 })
  })

  test('set for the first time by ten at once: one stands, nine are told of it', async () => {
    const tries = await Promise.allSettled(Array.from({ length: 10 }, (_, n) => set('gravel-from-ft3', n + 1)))
    const refused = tries.flatMap((one) => (one.status === 'rejected' ? [one.reason] : []))
    expect(refused).toHaveLength(9)
    const value = (await inForce()).gravelFromFt3
    for (const one of refused) expect(one).toMatchObject({ code: 'version-conflict', detail: { current: { value } } })
    expect((await history()).rows).toHaveLength(1)
  })

  test('goes back to the usual one, and its version goes on', async () => {
    await set('bags', [2, 1])
    await reset('bags', 1)
    expect((await inForce()).bagSizes).toBeNull()
    await expect(reset('bags', 2)).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('already the default') })
    await expect(reset('bags', 1)).rejects.toMatchObject({ code: 'version-conflict', detail: { current: { value: null } } })
    await expect(set('bags', [1])).rejects.toMatchObject({ code: 'version-conflict' })
    await set('bags', [1], 2)
    expect((await inForce()).bagSizes).toMatchObject([{ volumeFt3: 1 }])
    expect((await history()).rows.map(({ from, to }) => [from, to])).toEqual([
      [null, [1]],
      [[2, 1], null],
      [null, [2, 1]],
    ])
    await expect(reset('allowance:iron', 1)).rejects.toMatchObject({ code: 'not-found' })
  })

  test('is the firm’s alone, and of the same key in another firm', async () => {
    const other = await makeFirm()
    await set('allowance:iron', 3)
    await set('allowance:iron', 5, 0, null, other)
    expect((await inForce()).allowance.ironGpgPerMgL).toBe(3)
    expect((await inForce(other)).allowance.ironGpgPerMgL).toBe(5)
    expect(await readFirmFigures(firm)).toHaveLength(1)
    await set('bags', [1], 0, null, other)
    await expect(reset('bags', 1)).rejects.toMatchObject({ code: 'not-found' })
    expect((await history({ key: 'bags' })).rows).toEqual([])
    expect((await inForce(other)).bagSizes).toHaveLength(1)
  })

  test('is set once, however often the command arrives', async () => {
    const input = { commandId: newId(), key: 'gravel-from-ft3', version: 0, value: 2, note: null }
    const first = await changeFigure(firm, input)
    expect(await changeFigure(firm, input)).toEqual(first)
    await expect(changeFigure(firm, { ...input, value: 3 })).rejects.toMatchObject({ code: 'command-reused' })
    expect((await history()).rows).toHaveLength(1)
  })
})

test('the crew of a proposed rebed follows the firm’s bags: a sack of 102 lb wants one more', async () => {
  const crew = async (label: string) => {
    const { siteId, bedId } = await makeBed(firm, label, { diameterIn: 21, heightIn: 40 })
    const { jobId } = await proposeJob(firm, { commandId: newId(), siteId, bedId, kind: 'rebed' })
    const job = await inCompany(firm, (tx) => tx.job.findFirstOrThrow({ where: { id: jobId } }))
    return job.crewSize
  }
  expect(await crew('Weir House')).toBe(3)
  await set('bags', [2])
  expect(await crew('Mill House')).toBe(4)
})

test('the history is read page by page, and of one figure alone', async () => {
  for (const [at, value] of [2, 3, 4].entries()) await set('gravel-from-ft3', value, at)
  await set('allowance:iron', 3)
  const first = await history({ limit: 2 })
  const second = await history({ limit: 2, cursor: first.nextCursor ?? '' })
  expect([...first.rows, ...second.rows].map((row) => row.to)).toEqual([3, 4, 3, 2])
  expect(second.nextCursor).toBeNull()
  expect((await history({ key: 'allowance:iron' })).rows.map((row) => row.to)).toEqual([3])
})
