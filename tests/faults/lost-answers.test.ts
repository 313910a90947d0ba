import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest'
import { type Caller, makeCaller, PASSWORD, signInAs } from '../isolation/signed-in-call.ts'
import { breakableAddress } from '../support/breakable-address.ts'
import { testDatabase } from '../support/test-database.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

vi.mock('server-only', () => ({}))

const HOME = 'http://localhost:3000'
const api = path.resolve(import.meta.dirname, '../../apps/web/app/api')

let db: pg.Client
let firm: FirmRecords
let owner: Caller
let address: Awaited<ReturnType<typeof breakableAddress>>

beforeAll(async () => {
  const { appUrl, identityUrl } = await testDatabase()
  db = await inspector()
  firm = await makeFirmRecords(db)
  address = await breakableAddress(appUrl)
  // Before anything is opened: the sign-in library keeps its connections for good.
  vi.stubEnv('DATABASE_URL', address.through(appUrl))
  vi.stubEnv('IDENTITY_DATABASE_URL', address.through(identityUrl))
  vi.stubEnv('REQUESTS_PER_MINUTE', '1000000')
  vi.stubEnv('SIGN_IN_TRIES_PER_MINUTE', '1000')
  vi.stubEnv('LOG_LEVEL', 'silent')
  forgetConfig()
  owner = await makeCaller(firm.companyId)
})
afterEach(() => address.set('database'))
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
  await address.close()
  await db.end()
})

type Asked = { route: string; url: string; body?: string; type?: string; as?: Headers }
type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>

async function request({ route, url, body, type = 'application/json', as }: Asked): Promise<Response> {
  const method = body === undefined ? 'GET' : 'POST'
  const module = (await import(path.join(api, route, 'route.ts'))) as Record<string, Handler>
  const headers = new Headers({ 'content-type': type, 'sec-fetch-site': 'same-origin', origin: HOME, 'x-csrf-token': 'orpc' })
  headers.set('cookie', (as ?? owner.headers).get('cookie') ?? '')
  return (module[method] as Handler)(new Request(`${HOME}/api/${url}`, { method, headers, body }), { params: Promise.resolve({}) })
}
const call = (procedure: string, input: object) =>
  request({ route: 'rpc/[[...rest]]', url: `rpc/${procedure}`, body: JSON.stringify({ json: input }) })
const signIn = (path: string, input?: object, as?: Headers) =>
  request({ route: 'auth/[...all]', url: `auth/${path}`, body: input && JSON.stringify(input), as })

/** A company's next file waits until its last one is read. */
async function asReadByTheWorker(): Promise<void> {
  await db.query('delete from import_file_piece where company_id = $1', [firm.companyId])
  await db.query(`update import_batch set state = 'refused' where company_id = $1 and state = 'reading'`, [firm.companyId])
}

/** A read, a command, one that puts a task on the queue, what sign-in's library answers by itself, and an upload. */
const ASKED: Record<string, () => Promise<Response>> = {
  'a list': () => call('sites/list', {}),
  'a command': () => call('water/addSupply', { commandId: newId(), name: `Supply ${newId()}`, kind: 'town' }),
  'a command with a task': () => call('forecasts/checkAgain', { commandId: newId() }),
  'signing in': () => signIn('sign-in/email', { email: owner.email, password: PASSWORD }),
  'the own session': () => signIn('get-session'),
  'a new name': () => signIn('update-user', { name: 'Ada Roe' }),
  'an upload': async () => {
    await asReadByTheWorker()
    return request({ route: 'imports', url: 'imports?name=list.csv', body: 'Customer no.,Name\n1,Roe', type: 'text/csv' })
  },
}
const names = Object.keys(ASKED)
const ask = async (name: string) => {
  const answer = await (ASKED[name] as () => Promise<Response>)()
  return { status: answer.status, again: answer.headers.get('retry-after'), said: await answer.text() }
}
const AGAIN = { status: 503, again: '5', said: expect.stringContaining('unavailable') }

test.each(names)('%s works while nothing is broken', async (name) => {
  expect(await ask(name)).toMatchObject({ status: expect.toSatisfy(isDone), again: null })
})

test.each(names)('%s while nobody listens: 503, and when to try again', async (name) => {
  await address.set('nobody')
  expect(await ask(name)).toMatchObject(AGAIN)
})

test.each(names)('%s while the database is starting: 503, and when to try again', async (name) => {
  await address.set('starting')
  expect(await ask(name)).toMatchObject(AGAIN)
})

test.each(names)('%s while the database is starting, from a process that is young: 503, and when to try again', async (name) => {
  await closeTaskQueue()
  await closeClients()
  await address.set('starting')
  expect(await ask(name)).toMatchObject(AGAIN)
})

/** A request that says more than this to the database is cut in its first pieces only. */
const PIECES = 40
const EVERY = 2
const isDone = (status: number) => status === 200 || status === 201

test.each(names)(
  '%s whose connections are cut, wherever that is: 503, or done; and then it works again',
  { timeout: 120_000 },
  async (name) => {
    // The ways that an earlier cut closed are opened anew.
    const works = () =>
      vi.waitFor(async () => expect(await ask(name)).toMatchObject({ status: expect.toSatisfy(isDone) }), { timeout: 20_000 })
    const answers: Record<number, number> = {}
    for (let pieces = 1; pieces <= PIECES; pieces += EVERY) {
      await works()
      const wasCut = address.cutAt(pieces)
      const { status, again, said } = await ask(name)
      answers[status] = (answers[status] ?? 0) + 1
      expect(status, said).toSatisfy((one: number) => one === 503 || isDone(one))
      expect(again).toBe(status === 503 ? '5' : null)
      if (!wasCut()) break
    }
    await works()
    expect(answers[503], JSON.stringify(answers)).toBeGreaterThan(0)
  },
)

test('signing out while connections are cut, wherever that is: 503, or the session has ended', { timeout: 120_000 }, async () => {
  const statuses = new Set<number>()
  for (let pieces = 1; pieces <= PIECES; pieces++) {
    // The ways that were cut are opened anew first.
    const { headers, sessionId } = await vi.waitFor(() => signInAs(owner.email), { timeout: 10_000 })
    const wasCut = address.cutAt(pieces)
    const { status } = await signIn('sign-out', {}, headers)
    statuses.add(status)
    const { rowCount } = await db.query('select from session where id = $1', [sessionId])
    if (status === 200) expect(rowCount).toBe(0)
    else expect(status).toBe(503)
    if (!wasCut()) break
  }
  expect([...statuses].sort()).toEqual([200, 503])
})
