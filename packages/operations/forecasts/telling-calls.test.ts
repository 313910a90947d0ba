import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readTelling } from '@almanac/database/read/desk'
import { readDueBeds } from '@almanac/database/read/due-beds'
import { narrowedBy } from '@almanac/forecast/fleet/narrowed-by'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { proposeJob } from '../jobs/propose-job.ts'
import { DAY, type Firm, makeBed, makeFirm, makeForecast } from '../jobs/test-firm.ts'

const CALLS = 6
type Chances = { failed: number; fails: number; years: number }

/** A generator of its own (Park and Miller 1988, minimal standard), so that the simulation is the same each time. */
function chances(seed: number) {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

/** 24 beds, older ones with higher chances, as a firm's are: the surest have failed, the youngest have not. */
const random = chances(20_261_130)
const BEDS: Chances[] = Array.from({ length: 24 }, (_, i) => {
  const age = i / 23
  return { failed: Math.min(0.98, age ** 3 * (0.6 + 0.5 * random())), fails: 0.02 + 0.5 * age * random(), years: 2 + 20 * age }
})

/**
 * What is left of the variance of next year's count once some households were asked, by simulation and by no formula: worlds are drawn, put into groups by the answers
 * that would be heard in them, and the spread of the count within the groups is averaged.
 */
function varianceLeft(asked: readonly number[], draws = 400_000): number {
  const groups = new Map<string, { n: number; sum: number; squares: number }>()
  const draw = chances(7)
  for (let world = 0; world < draws; world++) {
    let count = 0
    const failed = BEDS.map((bed) => draw() < bed.failed)
    BEDS.forEach((bed, i) => {
      const later = draw() < bed.fails
      if (failed[i] || later) count++
    })
    const answers = asked.map((i) => (failed[i] ? 'h' : 's')).join('')
    const group = groups.get(answers) ?? { n: 0, sum: 0, squares: 0 }
    groups.set(answers, { n: group.n + 1, sum: group.sum + count, squares: group.squares + count * count })
  }
  let left = 0
  for (const { n, sum, squares } of groups.values()) left += (squares - (sum * sum) / n) / draws
  return left
}

let firm: Firm
let bedIds: string[]

beforeAll(async () => {
  setClock(() => new Date(`${DAY}T16:00:00Z`))
  firm = await makeFirm()
  bedIds = []
  for (const [i, { failed, fails }] of BEDS.entries()) {
    const place = await makeBed(firm, `Elm Street ${i}`)
    await makeForecast(firm, place, '2024-05-01', '2030-05-01')
    const { bedId } = place
    await inCompany(firm, (tx) =>
      tx.bedForecast.updateMany({
        where: { companyId: firm.companyId, bedId },
        data: { chanceAlreadyFailed: failed, chance12Months: fails },
      }),
    )
    bedIds.push(bedId)
  }
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

const inOrder = async () => (await readDueBeds(firm, { sort: 'telling', limit: 50 }, DAY)).rows.map((row) => bedIds.indexOf(row.bedId))

test('the calls that tell most leave less doubt about next year than calls at random or to the oldest, by as much as is said', async () => {
  const order = await inOrder()
  expect([...order].sort((a, b) => a - b)).toEqual(BEDS.map((_, i) => i))
  const nobody = varianceLeft([])
  const left = varianceLeft(order.slice(0, CALLS))
  const byAge = varianceLeft([...BEDS.keys()].sort((a, b) => (BEDS[b]?.years ?? 0) - (BEDS[a]?.years ?? 0)).slice(0, CALLS))
  const pick = chances(3)
  const atRandom = [1, 2, 3].map(() => varianceLeft([...BEDS.keys()].sort(() => pick() - 0.5).slice(0, CALLS), 100_000))
  expect(left).toBeLessThan(byAge)
  for (const one of atRandom) expect(left).toBeLessThan(one)
  const { calls, gain, ownVariance, workVariance } = await inCompany(firm, (tx) => readTelling(tx, firm.companyId, CALLS))
  expect(calls).toBe(CALLS)
  // 400,000 draws of a count whose variance is about 3: one part in a hundred is four standard errors.
  expect(workVariance / nobody).toBeCloseTo(1, 1.7)
  expect((nobody - left) / gain).toBeCloseTo(1, 1.3)
  // Without doubt about the parameters the range of eight in ten is 2.563 standard deviations wide (normal table: 1.2816 either way).
  const alone = { low: 0, high: 2.563 * Math.sqrt(ownVariance), ownVariance, workVariance }
  expect(narrowedBy(gain, alone)).toBeCloseTo(2.563 * (Math.sqrt(nobody) - Math.sqrt(left)), 1)
  // With it, the same answers narrow a wider range by less.
  expect(narrowedBy(gain, { ...alone, high: alone.high * 3 })).toBeLessThan(narrowedBy(gain, alone))
})

test('a bed whose rebed is on its way tells nothing', async () => {
  const [first = 0] = await inOrder()
  const place = await inCompany(firm, (tx) =>
    tx.bedForecast.findFirstOrThrow({ where: { companyId: firm.companyId, bedId: bedIds[first] }, select: { siteId: true, bedId: true } }),
  )
  await proposeJob(firm, { commandId: newId(), ...place, kind: 'rebed' })
  expect((await inOrder()).at(0)).not.toBe(first)
})
