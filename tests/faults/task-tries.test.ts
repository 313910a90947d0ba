import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { applyImport } from '@almanac/operations/imports/apply-import'
import { batchOf, type Firm, makeFirm, prepare } from '@almanac/operations/imports/test-import'
import { AppError } from '@almanac/runtime/errors'
import { closeTaskQueue, taskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import type { PgBoss } from 'pg-boss'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { GIVE_UP } from '../../apps/worker/give-up.ts'
import { workOn } from '../../apps/worker/work-on.ts'
import { testDatabase } from '../support/test-database.ts'
import { inspector, makeFirmRecords } from '../support/two-firms.ts'

const LIST = 'Customer no.,Name,Street,Town,Tank,Installed\n17,Anna Böhm,14 Orchard Ln,Weirbrook,10x54,2015-05-12\n'
/** Tries that the machine cost: kills, starts, a database that went away. */
const MANY = 9

let db: pg.Client
let boss: PgBoss
let firm: Firm
let batchId: string

beforeAll(async () => {
  process.env.LOG_LEVEL = 'silent' // what fails here fails on purpose
  await testDatabase()
  db = await inspector()
  boss = await taskQueue(true)
})
beforeEach(async () => {
  firm = await makeFirm()
  batchId = await prepare(firm, LIST)
})
afterEach(async () => {
  await boss.offWork('apply-import', { wait: true })
  // A task that still waits would be taken up by the next test's worker.
  await db.query(`delete from queue.job where name = 'apply-import'`)
})
afterAll(async () => {
  await closeTaskQueue(0)
  await closeClients()
  await db.end()
})

type Row = { state: string; tries: number; waitS: number }
/** The import's task: its state, how often it was begun again, and how long it still waits. */
async function task(): Promise<Row> {
  const sql = `select state, retry_count as tries, extract(epoch from start_after - now())::float8 as "waitS" from queue.job where name = 'apply-import' and data->>'batchId' = $1`
  return (await db.query<Row>(sql, [batchId])).rows[0] as Row
}
/** As after so many broken tries. */
const broken = (tries: number) =>
  db.query(`update queue.job set retry_count = $2, started_on = now() where name = 'apply-import' and data->>'batchId' = $1`, [
    batchId,
    tries,
  ])
const work = (handle: () => Promise<void>) => workOn(boss, 'apply-import', handle, GIVE_UP['apply-import'])
const apply = (midway?: () => Promise<void>) => applyImport({ companyId: firm.companyId, batchId }, midway)
const until = (check: () => Promise<void>, seconds = 20) => vi.waitFor(check, { timeout: seconds * 1000, interval: 50 })

test('an import that met many kills and loses its database is still being written, and is tried again within seconds', async () => {
  await broken(MANY)
  let losses = 0
  const waits: number[] = []
  await work(async () => {
    await apply(async () => {
      if (++losses > 2) return
      await db.query(`select pg_terminate_backend(pid) from pg_stat_activity
        where datname = current_database() and pid <> pg_backend_pid() and state = 'idle in transaction'`)
    }).catch(async (error) => {
      expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applying', failure: null })
      waits.push(performance.now())
      throw error
    })
  })
  await until(async () => expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applied' }), 100)
  expect(losses).toBe(3)
  // Two seconds, and the queue's own round; a task that waits longer with each try would wait 2 × 2⁹ s by then.
  expect((waits[1] as number) - (waits[0] as number)).toBeLessThan(60_000)
})

test('an import whose worker was killed many times waits no longer than seconds for its next try', async () => {
  await broken(MANY)
  await db.query(
    `update queue.job set state = 'active', heartbeat_on = now() - interval '1 minute' where name = 'apply-import' and data->>'batchId' = $1`,
    [batchId],
  )
  await db.query(`update queue.queue set monitor_on = null`)
  await boss.supervise('apply-import')
  await until(async () => expect(await task()).toMatchObject({ state: 'retry' })) // the queue's own round may have come first
  expect((await task()).waitS).toBeLessThan(6)
})

test('one that waits behind another import of its company is no failure', async () => {
  const holder = await inspector()
  await holder.query('begin')
  await holder.query(`select pg_advisory_xact_lock(hashtextextended($1, 0))`, [`import:${firm.companyId}`])
  const errors: unknown[] = []
  await work(() =>
    apply().catch((error) => {
      errors.push(error)
      throw error
    }),
  )
  // The lock is waited for ten seconds.
  await until(async () => expect(errors).toHaveLength(1))
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applying', failure: null })
  await holder.end()
  await until(async () => expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applied' }))
})

test('a refusal is the import’s own: it fails at once, says why, and is not tried again', async () => {
  await work(async () => {
    await apply(async () => {
      throw new AppError('invalid', 'This list takes too much time. Nothing was brought in; split it.')
    })
  })
  await until(async () => expect(await task()).toMatchObject({ state: 'failed', tries: 0 }))
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'failed', failure: expect.stringContaining('split it') })
})

test('an error of its own that nobody foresaw is tried again later and later, then fails with a sentence', async () => {
  let tries = 0
  await work(async () => {
    tries++
    await apply(async () => {
      throw new TypeError('a mistake of ours')
    })
  })
  await until(async () => expect(await task()).toMatchObject({ state: 'retry', tries: 0 }))
  expect((await task()).waitS).toBeGreaterThan(2) // twice the usual wait, less what has passed of it
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applying', failure: null })
  // As after seven more such errors, whose waits nobody has time for here.
  await db.query(
    `update queue.job set retry_limit = retry_limit - 700, start_after = now() where name = 'apply-import' and data->>'batchId' = $1`,
    [batchId],
  )
  await until(async () => {
    await db.query(`update queue.job set start_after = now() where name = 'apply-import' and data->>'batchId' = $1`, [batchId])
    expect(await task()).toMatchObject({ state: 'failed' })
  }, 60)
  expect(tries).toBe(10 - 7)
  const { state, failure } = await batchOf(firm, batchId)
  expect(state).toBe('failed')
  expect(failure).toContain('Nothing of it was written')
  expect(failure).not.toContain('mistake of ours')
  expect(await inCompany(firm, (tx) => tx.customer.count())).toBe(0)
})

test('a plan that was given up says so to whoever waits for it, and one that was stopped before stays stopped', async () => {
  const { companyId, planId } = await makeFirmRecords(db)
  const plan = async () => (await db.query('select state, failure from plan_proposal where id = $1', [planId])).rows[0]
  const stands = (state: string) => db.query('update plan_proposal set state = $2, failure = null where id = $1', [planId, state])
  await stands('stopped')
  await GIVE_UP['work-out-plan']?.({ companyId, planId }, new TypeError('a mistake of ours'))
  expect(await plan()).toEqual({ state: 'stopped', failure: null })
  await stands('running')
  await GIVE_UP['work-out-plan']?.({ companyId, planId }, new TypeError('a mistake of ours'))
  expect(await plan()).toEqual({ state: 'failed', failure: expect.stringContaining('Nothing was changed') })
})
