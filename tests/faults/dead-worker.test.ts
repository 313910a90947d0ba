import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { closeTaskQueue, sendTaskAlone } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { breakableAddress } from '../support/breakable-address.ts'
import { type TestDatabase, testDatabase } from '../support/test-database.ts'
import { inspector, makeFirmRecords } from '../support/two-firms.ts'

const root = path.resolve(import.meta.dirname, '../..')
const workers: ChildProcess[] = []
let db: pg.Client
let urls: TestDatabase

beforeAll(async () => {
  urls = await testDatabase()
  db = await inspector()
})
afterAll(async () => {
  for (const worker of workers) worker.kill('SIGKILL')
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

function startWorker(more: Record<string, string> = {}): ChildProcess {
  const env = { ...process.env, NODE_OPTIONS: '', LOG_LEVEL: 'info', ...more }
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

test('a worker that is stopped in the middle of a task ends within seconds, and hands the task back', { timeout: 120_000 }, async () => {
  for (const one of workers.splice(0)) one.kill('SIGKILL')
  const { companyId } = await makeFirmRecords(db)
  const task = async () =>
    (
      await db.query<{ state: string }>(
        `select state from queue.job where name = 'raise-reminders' and data->>'companyId' = $1 order by created_on limit 1`,
        [companyId],
      )
    ).rows
  const worker = startWorker()
  await once(worker.stdout as NodeJS.ReadableStream, 'data')
  const holder = await inspector()
  await holder.query('begin; lock table reminder in exclusive mode') // keeps the task from ending
  await sendTaskAlone('raise-reminders', { companyId })
  await vi.waitFor(async () => expect(await task()).toEqual([{ state: 'active' }]), { timeout: 30_000 })
  const asked = performance.now()
  worker.kill('SIGTERM')
  expect(await once(worker, 'exit')).toEqual([0, null])
  expect((performance.now() - asked) / 1000).toBeLessThan(8)
  expect(await task()).toEqual([{ state: 'retry' }])
  await holder.query('rollback')
  await holder.end()
})

test('a worker whose database goes away again and again while it starts is ready by itself in the end', { timeout: 60_000 }, async () => {
  // The checks take two, the queue its own: each of them is to meet it.
  const at = [2, 5, 6, 9, 11]
  const address = await breakableAddress(urls.appUrl, (count) => {
    if (!at.includes(count)) return
    void address.set('nobody')
    setTimeout(() => void address.set('database'), 400)
  })
  const worker = startWorker({ DATABASE_URL: address.through(urls.appUrl), IDENTITY_DATABASE_URL: address.through(urls.identityUrl) })
  let said = ''
  worker.stdout?.on('data', (text: Buffer) => {
    said += text
  })
  const ended = once(worker, 'exit')
  await Promise.race([ended, vi.waitFor(() => expect(said).toContain('worker is ready'), { timeout: 40_000, interval: 100 })])
  expect(said).toContain('worker is ready')
  expect(worker.exitCode).toBe(null)
  worker.kill('SIGTERM')
  expect(await ended).toEqual([0, null])
  await address.set('nobody')
})
