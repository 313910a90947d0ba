import { appClient, closeClients, identityClient } from '@almanac/database/client'
import { asAppError } from '@almanac/database/database-errors'
import { inCompany } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { checkAtStart } from '@almanac/database/start-check'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest'
import { type TestDatabase, testDatabase } from '../support/test-database.ts'
import { inspector, makeFirmRecords } from '../support/two-firms.ts'

// Plain JavaScript, without types of its own.
const { freePort } = await import(new URL('../../scripts/support/free-port.mjs', import.meta.url).href)
let db: pg.Client
let urls: TestDatabase
let firm: Awaited<ReturnType<typeof makeFirmRecords>>
let name = ''
const AWAY = { code: 'unavailable', status: 503, message: expect.stringContaining('nothing is saved twice') }

beforeAll(async () => {
  urls = await testDatabase()
  db = await inspector()
  firm = await makeFirmRecords(db)
  name = new URL(urls.appUrl).pathname.slice(1)
})
afterEach(async () => {
  vi.unstubAllEnvs()
  await db.query(`alter database ${name} connection limit -1`)
  await closeClients()
  forgetConfig()
})
afterAll(() => db.end())

const endOthers = () =>
  db.query(`select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()`)
const count = () => inCompany(firm, (tx) => tx.site.count())

test('a connection that is ended in the middle of a command: 503, nothing of it is there, and the next one works', async () => {
  const commandId = newId()
  const send = (breaks: boolean) =>
    runCommand(firm, 'test.send', { commandId }, async (tx) => {
      await tx.site.updateMany({ data: { notes: 'broken off' } })
      if (breaks) await endOthers()
      await tx.site.count()
      return { done: true }
    })
  await expect(send(true)).rejects.toMatchObject(AWAY)
  expect(await inCompany(firm, (tx) => tx.site.count({ where: { notes: 'broken off' } }))).toBe(0)
  await expect(send(false)).resolves.toEqual({ done: true })
})

test('connections that were ended while nobody used them are opened again', async () => {
  await count()
  await endOthers()
  await vi.waitFor(count)
})

test('a database that lets nobody in: 503 for the app and for sign-in, until it does again', async () => {
  await closeClients()
  await db.query(`alter database ${name} connection limit 0`)
  await expect(count()).rejects.toMatchObject(AWAY)
  const signIn = await identityClient().session.count().catch(asAppError)
  expect(signIn).toMatchObject(AWAY)
  await db.query(`alter database ${name} connection limit -1`)
  await expect(count()).resolves.toBeGreaterThan(0)
})

test('an address at which nobody listens: 503; a start waits for it, and goes on when it is there', async () => {
  await closeClients()
  const url = new URL(urls.appUrl)
  url.port = String(await freePort())
  vi.stubEnv('DATABASE_URL', url.href)
  forgetConfig()
  await expect(count()).rejects.toMatchObject(AWAY)
  let begun = false
  const start = checkAtStart().then(() => {
    begun = true
  })
  await new Promise((next) => setTimeout(next, 1500))
  expect(begun).toBe(false)
  vi.stubEnv('DATABASE_URL', urls.appUrl)
  forgetConfig()
  await closeClients()
  await start
  expect(begun).toBe(true)
})

test('a lost connection that the driver hands out bare, by its kind alone: 503', () => {
  // As it came out of a transaction whose database was killed.
  const bare = Object.assign(new Error(), { name: 'DriverAdapterError', cause: { kind: 'ConnectionClosed' } })
  expect(asAppError(bare)).toMatchObject(AWAY)
})

test('a full disk is said to be one, and nothing was saved', async () => {
  const full = appClient().$executeRawUnsafe(`do $$ begin raise exception 'could not extend file' using errcode = '53100'; end $$`)
  await expect(full.catch((error) => Promise.reject(asAppError(error)))).rejects.toMatchObject({
    code: 'unavailable',
    message: expect.stringContaining('disk of the server is full'),
  })
})
