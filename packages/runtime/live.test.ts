import pg from 'pg'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { type TestDatabase, testDatabase } from '../../tests/support/test-database.ts'
import { CHANNEL, type Change, LiveChanges } from './live.ts'

let urls: TestDatabase
let db: pg.Client
let live: LiveChanges
const [MINE, OTHER] = ['0193a1de-0000-7000-8000-000000000001', '0193a1de-0000-7000-8000-000000000002']

const say = (company: string, id: string) =>
  db.query('select pg_notify($1, $2)', [CHANNEL, JSON.stringify({ company, entity: 'bed', id, version: 2 })])
const listeners = async () =>
  (await db.query<{ pid: number }>(`select pid from pg_stat_activity where datname = current_database() and query = 'LISTEN ${CHANNEL}'`))
    .rows

beforeAll(async () => {
  urls = await testDatabase()
  db = new pg.Client({ connectionString: urls.superUrl })
  await db.connect()
  live = new LiveChanges(urls.appUrl)
  await live.start()
})
afterAll(async () => {
  await live.stop()
  await db.end()
})

describe('live changes', () => {
  test('reach those who listen for the company, over one connection, until they leave', async () => {
    const heard: Change[] = []
    const [leave, leaveToo] = [live.subscribe(MINE, (change) => heard.push(change)), live.subscribe(MINE, () => undefined)]
    await Promise.all([live.start(), live.start()])
    expect(await listeners()).toHaveLength(1)
    for (const rubbish of ['not json', '', '{', 'null', '7', '[]', JSON.stringify({ company: MINE, entity: 7, id: 'x' })])
      await db.query('select pg_notify($1, $2)', [CHANNEL, rubbish])
    await say(OTHER, 'theirs')
    await say(MINE, 'first')
    await vi.waitFor(() => expect(heard).toEqual([{ company: MINE, entity: 'bed', id: 'first', version: 2 }]))
    leave()
    leaveToo()
    let last = ''
    const end = live.subscribe(MINE, ({ id }) => {
      last = id
    })
    await say(MINE, 'second')
    await vi.waitFor(() => expect(last).toBe('second'))
    expect(heard).toHaveLength(1)
    end()
  })

  test('after a lost connection, and a database that lets nobody in for a while, go on by themselves, and all are told to look again', async () => {
    const heard: Change[] = []
    const leave = live.subscribe(MINE, (change) => heard.push(change))
    const name = new URL(urls.appUrl).pathname.slice(1)
    await db.query(`alter database ${name} connection limit 0`)
    const [first] = await listeners()
    await db.query('select pg_terminate_backend($1)', [first?.pid])
    await new Promise((done) => setTimeout(done, 2500))
    expect(heard).toEqual([])
    await db.query(`alter database ${name} connection limit -1`)
    await vi.waitFor(() => expect(heard).toEqual([{ company: MINE, entity: 'everything', id: MINE }]), { timeout: 10_000 })
    await say(MINE, 'after')
    await vi.waitFor(() => expect(heard.at(-1)?.id).toBe('after'))
    leave()
  })
})
