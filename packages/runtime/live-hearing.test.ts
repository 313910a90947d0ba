import pg from 'pg'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { type TestDatabase, testDatabase } from '../../tests/support/test-database.ts'
import { CHANNEL, type Change, LiveChanges } from './live.ts'

let urls: TestDatabase
let db: pg.Client
const FIRM = '0193a1de-0000-7000-8000-000000000001'

beforeAll(async () => {
  urls = await testDatabase()
  db = new pg.Client({ connectionString: urls.superUrl })
  await db.connect()
})
afterAll(() => db.end())

const notify = (text: string) => db.query('select pg_notify($1, $2)', [CHANNEL, text])

test('a connection that is open and deaf, as behind a pooler, is noticed, and all are told to look again once it hears', async () => {
  let deaf = true
  // What is sent goes elsewhere, until it does not.
  const send = (text: string) => db.query('select pg_notify($1, $2)', [deaf ? 'somewhere_else' : CHANNEL, text])
  const live = new LiveChanges(urls.appUrl, { send, everyMs: 50, withinMs: 200 })
  const heard: Change[] = []
  live.subscribe(FIRM, (change) => heard.push(change))
  expect(live.hearing).toBe('unknown')
  await live.start()
  await vi.waitFor(() => expect(live.hearing).toBe('deaf'), { timeout: 5000 })
  deaf = false
  await vi.waitFor(() => expect(live.hearing).toBe('hears'), { timeout: 10_000 })
  expect(heard).toContainEqual({ company: FIRM, entity: 'everything', id: FIRM })
  await live.stop()
})

test('a knock that cannot be sent says nothing of hearing: the database is away, and the connection stays', async () => {
  const send = vi.fn(() => Promise.reject(new Error('away')))
  const live = new LiveChanges(urls.appUrl, { send, everyMs: 20, withinMs: 100 })
  await live.start()
  await vi.waitFor(() => expect(send.mock.calls.length).toBeGreaterThan(3))
  expect(live.hearing).toBe('unknown')
  await live.stop()
})

test('a notice that is not ours is left alone, and the next one is heard', async () => {
  const live = new LiveChanges(urls.appUrl)
  const heard: Change[] = []
  live.subscribe(FIRM, (change) => heard.push(change))
  await live.start()
  await notify('not json')
  await notify('null')
  await notify(JSON.stringify({ company: FIRM, entity: 'bed', id: 'x' }))
  await vi.waitFor(() => expect(heard).toEqual([{ company: FIRM, entity: 'bed', id: 'x' }]))
  await live.stop()
})
