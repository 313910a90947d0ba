import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { closeTaskQueue, sendTaskAlone } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { testDatabase } from '../support/test-database.ts'
import { inspector, makeFirmRecords } from '../support/two-firms.ts'

const root = path.resolve(import.meta.dirname, '../..')
const workers: ChildProcess[] = []
let db: pg.Client

beforeAll(async () => {
  await testDatabase()
  db = await inspector()
})
afterAll(async () => {
  for (const worker of workers) worker.kill('SIGKILL')
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

function startWorker(): ChildProcess {
  const env = { ...process.env, NODE_OPTIONS: '', LOG_LEVEL: 'info' }
  const worker = spawn(process.execPath, ['apps/worker/main.ts'], { cwd: root, env, stdio: ['ignore', 'pipe', 'inherit'] })
  workers.push(worker)
  return worker
}

test('the task of a worker that was killed is done by the next within half a minute, once', { timeout: 120_000 }, async () => {
  const { companyId } = await makeFirmRecords(db)
  const task = async () =>
    (
      await db.query<{ state: string; tries: number }>(
        `select state, retry_count as tries from queue.job where name = 'raise-reminders' and data->>'companyId' = $1 order by created_on limit 1`,
        [companyId],
      )
    ).rows
  const first = startWorker()
  await once(first.stdout as NodeJS.ReadableStream, 'data') // its first line: it is ready
  const holder = await inspector()
  await holder.query('begin; lock table reminder in exclusive mode') // keeps the task from ending
  await sendTaskAlone('raise-reminders', { companyId })
  await vi.waitFor(async () => expect(await task()).toEqual([{ state: 'active', tries: 0 }]), { timeout: 30_000 })
  first.kill('SIGKILL')
  await once(first, 'exit')
  const died = performance.now()
  await holder.query('rollback')
  await holder.end()
  startWorker()
  await vi.waitFor(async () => expect(await task()).toEqual([{ state: 'completed', tries: 1 }]), { timeout: 60_000, interval: 250 })
  expect((performance.now() - died) / 1000).toBeLessThan(30)
})
