import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { newBedSurvival } from '@almanac/forecast/policy/new-bed-survival'
import { setClock } from '@almanac/runtime/clock'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { addManyBeds } from '../../../tests/support/many-beds.ts'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { parametersOf } from './parameters.ts'
import { readPool } from './pool.ts'
import { refitCompany } from './refresh-forecasts.ts'
import { yearsBySurvival } from './years-by-survival.ts'

const WATER = { freeChlorineMgL: 1, chloramineMgL: 0, ironMgL: 0, temperatureC: null }

let db: pg.Client
let mine: FirmRecords
let other: FirmRecords

const refit = ({ companyId }: FirmRecords) => refitCompany({ companyId, cause: 'nightly' })
const choose = ({ companyId }: FirmRecords, poolFits: boolean) =>
  inCompany({ companyId }, (tx) => tx.companySettings.updateMany({ where: { companyId }, data: { poolFits } }))
const parameters = async ({ companyId }: FirmRecords) =>
  (await inCompany({ companyId }, (tx) => parametersOf(tx, companyId, NOW.slice(0, 10)))).parameters
/** Half of a firm's new beds on water with 1 mg/L of chlorine last so long. */
const median = async (firm: FirmRecords) => {
  const lives = newBedSurvival({ crosslinkPercent: 8, gallonsPerDayPerFt3: null }, WATER, await parameters(firm))
  return yearsBySurvival(lives, 41)[20] ?? Number.NaN
}
const newestFit = ({ companyId }: FirmRecords) =>
  inCompany({ companyId }, (tx) => tx.forecastFit.findFirstOrThrow({ where: { companyId }, orderBy: { finishedAt: 'desc' } }))

beforeAll(async () => {
  db = await inspector()
  // Each look at the clock is a little later, so that "the newest" has a meaning.
  let ticks = Date.parse(NOW)
  setClock(() => new Date(ticks++))
})
beforeEach(async () => {
  // Firms of other tests take no part.
  await db.query('update company_settings set pool_fits = false')
  mine = await makeFirmRecords(db)
  other = await makeFirmRecords(db)
  for (const firm of [mine, other]) await db.query('delete from forecast_fit where company_id = $1 and shown_at is null', [firm.companyId])
  await addManyBeds(mine, 6, 9)
  await addManyBeds(other, 80, 4.5)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('learning together with other firms', () => {
  test('is off unless both chose it: then one firm’s fit neither takes from nor gives to the other', async () => {
    await refit(other)
    await refit(mine)
    const alone = await parameters(mine)
    expect((await newestFit(other)).shared).toBeNull()
    for (const [one, two] of [
      [true, false],
      [false, true],
    ] as const) {
      await choose(mine, one)
      await choose(other, two)
      await refit(other)
      await refit(mine)
      expect((await readPool(mine.companyId))?.others ?? []).toEqual([])
      expect((await parameters(mine)).logMean).toEqual(alone.logMean)
      expect((await parameters(mine)).logCovariance).toEqual(alone.logCovariance)
    }
  })

  test('once both chose it, a firm of few failures moves towards what the other’s beds showed; back off, it is what it was', async () => {
    await refit(mine)
    const alone = await median(mine)
    await choose(mine, true)
    await choose(other, true)
    await refit(other)
    await refit(mine)
    const theirs = await median(other)
    expect(theirs).toBeLessThan(alone)
    expect(await median(mine)).toBeLessThan(alone)
    expect(await median(mine)).toBeGreaterThan(theirs)
    expect((await parameters(mine)).sources.join(' ')).toContain('1 other firm')
    await choose(other, false)
    await refit(mine)
    expect(await median(mine)).toBe(alone)
  })

  test('a firm without a failure starts from the others’ fits instead of industry rules of thumb', async () => {
    const young = await makeFirmRecords(db)
    await refit(young)
    const alone = await median(young)
    await choose(young, true)
    await choose(other, true)
    await refit(other)
    await refit(young)
    expect(await median(young)).toBeLessThan(alone)
    // Its survivors are records as well: what they say by themselves is handed on.
    expect((await newestFit(young)).shared).toMatchObject({ logMean: expect.any(Array) })
  })

  test('hands on figures of models and nothing else, always from its own records alone', async () => {
    await choose(mine, true)
    await refit(mine)
    const before = (await newestFit(mine)).shared
    await choose(other, true)
    await refit(other)
    await refit(mine)
    const { shared, parameters: used } = await newestFit(mine)
    expect(shared).toEqual(before)
    expect(used).not.toMatchObject({ logMean: (shared as { logMean: number[] }).logMean })
    expect(Object.keys(shared as object).sort()).toEqual(['alternatives', 'family', 'logCovariance', 'logMean'])
    // No id of anything, no name, no day.
    expect(JSON.stringify(shared)).not.toMatch(/[0-9a-f]{8}-|\d{4}-\d\d-\d\d|Larkmoor/)
  })
})
