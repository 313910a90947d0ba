import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { ADDRESS_HEADER } from '@almanac/identity/client-address'
import { makePublicToken } from '@almanac/identity/public-token'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { liveChanges } from '../../apps/web/server/live-changes.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'
import { type Caller, makeCaller } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

/** Requests in a minute, for these tests: few enough to go beyond. */
const LIMIT = 40
const HOME = 'http://localhost:3000'
const api = path.resolve(import.meta.dirname, '../../apps/web/app/api')

type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>
type Sent = { headers?: HeadersInit; body?: BodyInit; url?: string; params?: Record<string, string>; from?: string; signal?: AbortSignal }

let db: pg.Client
let firm: FirmRecords
let owner: Caller

async function ask(route: string, method: 'GET' | 'POST', sent: Sent = {}): Promise<Response> {
  const module = (await import(path.join(api, route, 'route.ts'))) as Record<string, Handler>
  const headers = new Headers(sent.headers)
  headers.set('sec-fetch-site', 'same-origin')
  headers.set('origin', HOME)
  headers.set('x-csrf-token', 'orpc')
  headers.set(ADDRESS_HEADER, sent.from ?? '192.0.2.1')
  const more = { duplex: 'half', signal: sent.signal } as RequestInit
  const request = new Request(`${HOME}/api/${sent.url ?? route}`, { method, headers, body: sent.body, ...more })
  return (module[method] as Handler)(request, { params: Promise.resolve(sent.params ?? {}) })
}

/** A body that goes on for as long as it is read, in pieces of 64 kB, and counts what was taken. */
function endless(most: number, piece = ' '.repeat(65_536)) {
  const told = { bytes: 0 }
  const bytes = new TextEncoder().encode(piece)
  const stream = new ReadableStream<Uint8Array>(
    {
      pull(controller) {
        if (told.bytes >= most) return controller.close()
        told.bytes += bytes.length
        controller.enqueue(bytes)
      },
    },
    { highWaterMark: 0 },
  )
  return { stream, told }
}

const json = (headers: Headers) => ({ cookie: headers.get('cookie') ?? '', 'content-type': 'application/json' })
const list = (headers: HeadersInit, body: BodyInit, from?: string) =>
  ask('rpc/[[...rest]]', 'POST', { url: 'rpc/sites/list', headers, body, from })
const filesLeft = () => fs.readdirSync(os.tmpdir()).filter((name) => name.startsWith('almanac-file-'))

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = String(LIMIT)
  // A place of this test's own for files on their way in: others of this machine are none of its business.
  process.env.TMPDIR = fs.mkdtempSync(path.join(os.tmpdir(), 'doors-'))
  firm = await makeFirmRecords(db)
  owner = await makeCaller(firm.companyId)
})
afterAll(async () => {
  await liveChanges().stop()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a body', () => {
  test('of whoever has no session is not read at all', async () => {
    const { stream, told } = endless(250e6)
    expect((await list({ 'content-type': 'application/json' }, stream)).status).toBe(401)
    expect(told.bytes).toBe(0)
  })

  test.each([
    ['says nothing of its length', {}],
    ['says too little of its length', { 'content-length': '10' }],
  ])('beyond 1 MB that %s is refused at the byte beyond', async (_, more) => {
    const { stream, told } = endless(250e6)
    const answer = await list({ ...json(owner.headers), ...more }, stream)
    expect(answer.status).toBe(413)
    expect(((await answer.json()) as { json: { message: string } }).json.message).toContain('1,024 kB')
    expect(told.bytes).toBeLessThan(1024 * 1024 + 2 * 65_536)
  })

  test('that says itself that it is too long is refused before a byte of it', async () => {
    const { stream, told } = endless(250e6)
    expect((await list({ ...json(owner.headers), 'content-length': '250000000' }, stream)).status).toBe(413)
    expect(told.bytes).toBe(0)
  })

  test.each([
    ['nested 33 deep', `${'['.repeat(33)}${']'.repeat(33)}`, 413],
    ['of 50,000 values', `[${'1,'.repeat(49_999)}1]`, 413],
    ['that is no JSON', '{"json":', 400],
    ['with brackets in its texts only', JSON.stringify({ json: { q: `${'['.repeat(90)},"\\`, limit: 5 } }), 200],
  ])('%s is answered with %3$i', async (_, body, status) => {
    expect((await list(json(owner.headers), body as string)).status).toBe(status)
  })

  test('for sign-in ends at 16 kB', async () => {
    const { stream, told } = endless(60e6)
    const headers = { 'content-type': 'application/json' }
    const answer = await ask('auth/[...all]', 'POST', { url: 'auth/sign-in/email', headers, body: stream })
    expect(answer.status).toBe(413)
    expect(told.bytes).toBeLessThan(200_000)
  })

  test('for an arrival link ends at 4 kB, and what is no form is no choice', async () => {
    const token = makePublicToken('arrival-windows', { companyId: firm.companyId, id: firm.offerId })
    const choose = (body?: BodyInit) => ask('arrival/[token]', 'POST', { url: `arrival/${token}`, params: { token }, body })
    const { stream, told } = endless(50e6)
    expect((await choose(stream)).status).toBe(413)
    expect(told.bytes).toBeLessThan(200_000)
    for (const body of [undefined, 'nothing like a form', new Uint8Array([0xff, 0xfe, 0]), '{"window":1}']) {
      const answer = await choose(body)
      expect([answer.status, answer.headers.get('location')]).toEqual([303, `/arrival/${token}?answer=none`])
    }
  })

  test('that is a file goes to disk, is refused beyond 20 MB, and leaves nothing there', async () => {
    const { stream, told } = endless(250e6, 'Hanna Vale,Weir Road 8,10x54\n'.repeat(2000))
    const answer = await ask('imports', 'POST', { headers: owner.headers, body: stream })
    expect([answer.status, await answer.text()]).toEqual([400, expect.stringContaining('larger than 20 MB')])
    expect(told.bytes).toBeLessThan(22e6)
    expect(filesLeft()).toEqual([])
    const broken = new ReadableStream({ pull: (controller) => controller.error(new Error('gone')) })
    expect((await ask('imports', 'POST', { headers: owner.headers, body: broken })).status).toBe(400)
    expect(filesLeft()).toEqual([])
  })

  test('that is a file is kept waiting for nobody: a firm’s second at one time is told to come back', async () => {
    let end = () => {}
    const slow = () => {
      const body = new ReadableStream<Uint8Array>({
        start: (controller) => {
          end = () => controller.close()
        },
      })
      return ask('imports', 'POST', { headers: owner.headers, body })
    }
    const first = slow()
    await vi.waitFor(() => expect(filesLeft()).toHaveLength(1), { timeout: 20_000 })
    const endFirst = end
    const second = await slow()
    expect([second.status, await second.text()]).toEqual([429, expect.stringContaining('Try again in a minute')])
    endFirst()
    // An empty file.
    expect((await first).status).toBe(400)
    expect(filesLeft()).toEqual([])
  })
})

describe('requests are counted', () => {
  /** Asks until it is held up; answers how often it was not. The limit is of a minute: a slow machine may see two. */
  async function untilHeldUp(work: () => Promise<Response>, usual: number): Promise<number> {
    for (let turn = 0; turn <= 2 * LIMIT; turn++) {
      const { status } = await work()
      if (status === 429) return turn
      expect(status).toBe(usual)
    }
    throw new Error('was never held up')
  }

  test('of a person who is forbidden what they ask for', async () => {
    const { headers } = await makeCaller(firm.companyId, 'technician')
    const forbidden = () =>
      ask('rpc/[[...rest]]', 'POST', { url: 'rpc/imports/list', headers: json(headers), body: '{"json":{"limit":5}}' })
    expect(await untilHeldUp(forbidden, 403)).toBeGreaterThanOrEqual(LIMIT)
  })

  test('of an address without a session, and another address is not held up', async () => {
    const stranger = (from: string) => list({ 'content-type': 'application/json' }, '{"json":{}}', from)
    expect(await untilHeldUp(() => stranger('198.51.100.7'), 401)).toBeGreaterThanOrEqual(LIMIT)
    expect((await stranger('198.51.100.8')).status).toBe(401)
  })

  test('of an address that tries links', async () => {
    const guess = () => ask('calendar/[token]', 'GET', { params: { token: newId() }, from: '198.51.100.9' })
    expect(await untilHeldUp(guess, 404)).toBeGreaterThanOrEqual(LIMIT)
  })

  test('of whoever opens live streams, of which a person holds thirty open', async () => {
    const { headers } = await makeCaller(firm.companyId)
    const open: AbortController[] = []
    const stream = () => {
      const control = new AbortController()
      open.push(control)
      return ask('live', 'GET', { headers, signal: control.signal })
    }
    for (let turn = 0; turn < 30; turn++) expect((await stream()).status).toBe(200)
    const more = await stream()
    expect([more.status, ((await more.json()) as { message: string }).message]).toEqual([429, expect.stringContaining('30 pages')])
    open[0]?.abort()
    expect((await stream()).status).toBe(200)
    for (const control of open) control.abort()
    // Opened and closed again at once, they are counted all the same.
    const openAndClose = async () => {
      const answer = await stream()
      open.at(-1)?.abort()
      return answer
    }
    expect(await untilHeldUp(openAndClose, 200)).toBeLessThan(2 * LIMIT)
  })
})
