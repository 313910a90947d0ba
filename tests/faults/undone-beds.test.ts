import { setTimeout as sleep } from 'node:timers/promises'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readDueBeds } from '@almanac/database/read/due-beds'
import { readDueMonths } from '@almanac/database/read/due-months'
import { readPolicyInputs } from '@almanac/database/read/policy-inputs'
import { readReminderCandidates } from '@almanac/database/read/reminder-candidates'
import { readStoreDemand } from '@almanac/database/read/store-demand'
import { readSupply } from '@almanac/database/read/water-supplies'
import { readWeakestRecords } from '@almanac/database/read/weakest-records'
import { refreshBeds, refreshCompany } from '@almanac/operations/forecasts/refresh-forecasts'
import { sumMonths } from '@almanac/operations/forecasts/sum-months'
import { batchOf, bringIn, type Firm, makeFirm } from '@almanac/operations/imports/test-import'
import { undoImport } from '@almanac/operations/imports/undo-import'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../support/test-database.ts'

let firm: Firm
let db: pg.Client
let holder: pg.Client
const done = new Set<string>()
const FILE = [
  'Customer no,Name,Street,Town,Zip,Tank,Installed,Hardness (gpg),Water supply',
  '17,Anna Böhm,14 Orchard Ln,Larkmoor,84001,10x54,1999,18,Larkmoor town',
  '18,Bell House,3 Mill Rd,Larkmoor,84001,9x48,,22,Larkmoor town',
].join('\n')

beforeAll(async () => {
  const { superUrl } = await testDatabase()
  db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  holder = new pg.Client({ connectionString: superUrl })
  await holder.connect()
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  await db.end()
  await holder.end()
  await closeTaskQueue()
  await closeClients()
})

async function undo(batchId: string) {
  const { version } = await batchOf(firm, batchId)
  return undoImport(firm, { commandId: newId(), batchId, version })
}

/** The forecast tasks of the firm that wait, each done once, as the worker does them. */
async function workOn(): Promise<void> {
  const tasks = await db.query(`select id, data from queue.job where name = 'forecast-beds' and data->>'companyId' = $1`, [firm.companyId])
  for (const { id, data } of tasks.rows) {
    if (done.has(id)) continue
    done.add(id)
    await refreshBeds(data)
  }
}
const forecasts = () => inCompany(firm, (tx) => tx.bedForecast.count({ where: { companyId: firm.companyId } }))
const run = (batchId: string, midway?: () => Promise<void>) =>
  refreshCompany({ companyId: firm.companyId, batchId, cause: 'import' }, midway)

describe('an import undone', () => {
  test('between its own run’s last draft and the showing leaves no forecast', async () => {
    const { batchId } = await bringIn(firm, FILE)
    await workOn()
    await run(batchId, async () => {
      await undo(batchId)
      await workOn()
    })
    expect(await forecasts()).toBe(0)
  })

  test('while its run is being shown waits for that, and leaves no forecast', async () => {
    const { batchId } = await bringIn(firm, FILE)
    await workOn()
    // The run has written the forecasts and stands before the month picture: nobody else sees them yet.
    await holder.query('begin; lock table forecast_month in access exclusive mode')
    const shown = run(batchId)
    const stands = async () =>
      (
        await db.query(
          `select from pg_stat_activity where wait_event_type = 'Lock' and query ilike '%forecast_month%' and pid <> pg_backend_pid()`,
        )
      ).rowCount
    for (let tries = 0; !(await stands()); tries++) {
      expect(tries).toBeLessThan(200)
      await sleep(50)
    }
    const undone = undo(batchId).then(workOn)
    await Promise.race([undone, sleep(2000)])
    await holder.query('commit')
    await shown
    await undone
    expect(await forecasts()).toBe(0)
  })
})

test('a bed that was put away, or has ended, is in no list and in no sum, though its forecast is still there', async () => {
  const { companyId } = firm
  const { batchId } = await bringIn(firm, FILE)
  await run(batchId)
  const seen = async () => {
    await sumMonths({ companyId })
    const { rows } = await readDueBeds(firm, { sort: 'due', limit: 50 }, '2026-12-02')
    const months = await readDueMonths(firm, { by: 'area' }, 'UTC')
    const weakest = await readWeakestRecords(firm, { limit: 50 })
    const stores = await readStoreDemand(firm, '2026-12-02')
    const [supply] = await inCompany(firm, (tx) => tx.waterSupply.findMany({ where: { companyId } }))
    const page = await readSupply(firm, supply?.id ?? '', '2026-12-02')
    const { candidates, policy } = await inCompany(firm, async (tx) => ({
      candidates: await readReminderCandidates(tx, companyId, 'twelve-months', '2200-01-01', null, 50),
      policy: await readPolicyInputs(tx, companyId, null),
    }))
    return {
      due: rows.length,
      summed: months.beds,
      grouped: months.groups.reduce((sum, group) => sum + group.beds, 0),
      failedAlready: Math.sign(months.failedAlready),
      weakest: weakest.rows.length,
      kits: stores.beds.length,
      supply: page.bedsWatched,
      candidates: candidates.length,
      policy: policy.bedsWatched,
    }
  }
  const both = await seen()
  expect(both).toEqual({
    due: 2,
    summed: 2,
    grouped: 2,
    failedAlready: 1,
    weakest: both.weakest,
    kits: 2,
    supply: 2,
    candidates: 2,
    policy: 2,
  })
  expect(both.weakest).toBeGreaterThan(0)
  const beds = await inCompany(firm, (tx) => tx.bed.findMany({ where: { companyId }, orderBy: { id: 'asc' } }))
  await db.query('update bed set archived_at = now() where id = $1', [beds[0]?.id])
  await db.query(`update bed set ended_earliest = '2026-01-01', ended_latest = '2026-01-01', end_cause = 'unknown' where id = $1`, [
    beds[1]?.id,
  ])
  expect(await forecasts()).toBe(2)
  const none = await seen()
  expect(Object.values(none).every((count) => count === 0)).toBe(true)
})
