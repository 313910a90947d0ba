import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { closeClients } from '@almanac/database/client'
import { refreshCompany } from '@almanac/operations/forecasts/refresh-forecasts'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { addManyBeds } from '../support/many-beds.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

const root = path.resolve(import.meta.dirname, '../..')
/** A chunk of a run and part of another, so that there is a middle to be killed in. */
const BEDS = 700
const BOUND_MS = 150_000

let db: pg.Client
let firm: FirmRecords
let worker: ChildProcess | undefined

const startWorker = () => {
  worker = spawn(process.execPath, ['apps/worker/main.ts'], { cwd: root, env: { ...process.env, NODE_OPTIONS: '' }, stdio: 'ignore' })
}
async function killWorker(): Promise<void> {
  if (!worker || worker.exitCode !== null || worker.signalCode !== null) return
  const ended = once(worker, 'exit')
  worker.kill('SIGKILL')
  await ended
}
const one = async <T>(sql: string): Promise<T> => (await db.query(sql, [firm.companyId])).rows[0] as T

/** Waits until `sql` answers true; fails after the bound. */
async function until(what: string, sql: string, everyMs = 25): Promise<void> {
  const end = Date.now() + BOUND_MS
  while (!(await one<{ yes: boolean }>(sql))?.yes) {
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`)
    await pause(everyMs)
  }
}
const shown = () =>
  one<{ runs: string[]; beds: number }>(
    'select array_agg(distinct run_id::text) as runs, count(*)::int as beds from bed_forecast where company_id = $1',
  )
const months = () => one<{ runs: string[] }>('select array_agg(distinct run_id::text) as runs from forecast_month where company_id = $1')

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
  // The fixture's own fit and run are no work of a worker's.
  for (const table of ['forecast_draft', 'forecast_fit', 'bed_forecast'])
    await db.query(`delete from ${table} where company_id = $1`, [firm.companyId])
  await addManyBeds(firm, BEDS, 9)
  await refreshCompany({ companyId: firm.companyId, cause: 'import' })
})
afterEach(async () => {
  await killWorker()
  // Other tests of this file find no company left to work on.
  await db.query(`update forecast_run set finished_at = now() where company_id = $1 and finished_at is null`, [firm.companyId])
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

const FINISHED = `select exists (select from forecast_run where company_id = $1 and refits and finished_at is not null and beds > 0) as yes`

describe('a worker killed in a refit', () => {
  test.each([
    ['while it fits', `select exists (select from forecast_run where company_id = $1 and refits and fit_id is null) as yes`],
    [
      'while it drafts',
      `select exists (select from forecast_draft d join forecast_run r on r.company_id = d.company_id and r.id = d.run_id
        where d.company_id = $1 and r.finished_at is null) as yes`,
    ],
  ])(
    '%s shows nothing of it, and the next start finishes it',
    async (_when, inTheMiddle) => {
      const before = await shown()
      expect(before).toMatchObject({ beds: BEDS + 2, runs: [expect.any(String)] })
      startWorker()
      await until('the middle of a refit', inTheMiddle)
      await killWorker()
      expect(await shown()).toEqual(before)
      expect((await months()).runs).toEqual(before.runs)
      const broken = await one<{ id: string }>('select id from forecast_run where company_id = $1 and refits and finished_at is null')
      expect(broken?.id).toBeTypeOf('string')

      startWorker()
      await until('the end of the refit', FINISHED, 200)
      expect(await shown()).toEqual({ beds: BEDS + 2, runs: [broken.id] })
      expect((await months()).runs).toEqual([broken.id])
      expect(await one('select count(*)::int as drafts from forecast_draft where company_id = $1')).toEqual({ drafts: 0 })
      expect(
        await one(
          'select count(*)::int as fits, count(r.id)::int as named from forecast_fit f left join forecast_run r on r.company_id = f.company_id and r.fit_id = f.id and r.refits where f.company_id = $1 and f.shown_at is not null',
        ),
      ).toEqual({ fits: 1, named: 1 })
    },
    240_000,
  )
})
