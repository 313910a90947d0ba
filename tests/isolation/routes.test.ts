import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { TABLES } from '@almanac/database/tables'
import { addMembership, endMembership } from '@almanac/identity/people'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { liveChanges } from '../../apps/web/server/live-changes.ts'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../support/two-firms.ts'
import { type Caller, makeCaller } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

const app = path.resolve(import.meta.dirname, '../../apps/web/app')
const HOME = 'http://localhost:3000'

/** Routes that answer without a session by their nature: sign-in itself, a forgotten password, and what an operator's watchdog asks. */
const OPEN = ['api/auth/[...all]', 'api/mail-link', 'healthz', 'readyz']
/** Routes for whoever holds a link that works once; packages/identity/set-up.test.ts and members.test.ts. */
const ONCE = ['api/join/[token]', 'api/new-email/[token]', 'api/new-password/[token]', 'api/set-up/[token]']
/** Routes for whoever holds a signed link; tests/isolation/public-links. */
const LINKED = [
  'api/arrival/[token]',
  'api/arrival/[token]/calendar',
  'api/calendar/[token]',
  'api/measure/[token]',
  'api/measure/[token]/act',
  'api/measure/[token]/photograph',
  'api/reminder/[token]',
  'api/reminder/[token]/stop',
]
/** Routes behind a session; the procedures' own has its tests beside this file. */
const CLOSED = [
  'api/beds/[bedId]/plan',
  'api/exports/[id]',
  'api/imports',
  'api/imports/[id]/problems',
  'api/letters',
  'api/live',
  'api/logo',
  'api/messages/[id]/report',
  'api/pictures/[id]',
  'api/pictures/[id]/upload',
  'api/rpc/[[...rest]]',
  'api/visits/[visitId]/report',
]

let db: pg.Client
let mine: FirmRecords
let theirs: FirmRecords
let owner: Caller
let stranger: Caller

type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>

type Method = 'GET' | 'HEAD' | 'PATCH' | 'POST'

async function ask(route: string, method: Method, headers: Headers, more: { body?: string; params?: Record<string, string> } = {}) {
  const module = (await import(path.join(app, route, 'route.ts'))) as Record<string, Handler>
  const sent = new Headers(headers)
  sent.set('sec-fetch-site', 'same-origin')
  const request = new Request(`${HOME}/${route}?name=list.csv`, { method, headers: sent, body: more.body })
  const handler = module[method]
  if (!handler) throw new Error(`${route} takes no ${method}`)
  return handler(request, { params: Promise.resolve(more.params ?? {}) })
}
const plain = async (answer: Response, id = '-') => ({
  status: answer.status,
  said: (await answer.text()).replaceAll(id, '<id>').replace(/"requestId":"[^"]+"/, ''),
})

beforeAll(async () => {
  db = await inspector()
  mine = await makeFirmRecords(db)
  theirs = await makeFirmRecords(db)
  owner = await makeCaller(mine.companyId)
  stranger = await makeCaller(theirs.companyId)
})
afterAll(async () => {
  await liveChanges().stop()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('every route is known here', () => {
  const files = fs.globSync('**/route.ts', { cwd: app }).map((file) => path.dirname(file).replace(/^\([^)]+\)\//, ''))
  expect(files.sort()).toEqual([...OPEN, ...ONCE, ...LINKED, ...CLOSED].sort())
})

test.each([
  ['api/beds/[bedId]/plan', 'GET'],
  ['api/exports/[id]', 'GET'],
  ['api/imports', 'POST'],
  ['api/imports/[id]/problems', 'GET'],
  ['api/letters', 'GET'],
  ['api/live', 'GET'],
  ['api/messages/[id]/report', 'GET'],
  ['api/pictures/[id]', 'GET'],
  ['api/pictures/[id]/upload', 'HEAD'],
  ['api/pictures/[id]/upload', 'PATCH'],
  ['api/visits/[visitId]/report', 'GET'],
] as const)('%s is refused without a session', async (route, method) => {
  const more = {
    params: { id: mine.batchId, bedId: mine.bedId, visitId: mine.visitId },
    body: method === 'POST' ? 'Name\nHanna' : undefined,
  }
  expect((await ask(route, method, new Headers(), more)).status).toBe(401)
})

test('letters to print are the company’s own, and for whoever sends messages', async () => {
  await db.query(`update message set channel = 'letter' where company_id = $1`, [theirs.companyId])
  expect((await ask('api/letters', 'GET', owner.headers)).status).toBe(303)
  const answer = await ask('api/letters', 'GET', stranger.headers)
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf'])
})

describe('the rows to fix of an import', () => {
  const rows = (headers: Headers, id: string) => ask('api/imports/[id]/problems', 'GET', headers, { params: { id } })

  test('are given to the owner of the firm', async () => {
    const answer = await rows(owner.headers, mine.batchId)
    expect(answer.status).toBe(200)
    expect(answer.headers.get('content-disposition')).toContain('rows to fix')
  })
  test('of another firm are answered like those of an import that does not exist', async () => {
    const none = newId()
    const missing = await plain(await rows(owner.headers, none), none)
    expect(await plain(await rows(owner.headers, theirs.batchId), theirs.batchId)).toEqual(missing)
    expect(missing.status).toBe(404)
    expect((await rows(stranger.headers, theirs.batchId)).status).toBe(200)
  })
  test.each(['dispatcher', 'technician'] as const)('are not given to a %s', async (role) => {
    const { headers } = await makeCaller(mine.companyId, role)
    expect((await rows(headers, mine.batchId)).status).toBe(403)
  })
})

describe('an archive of everything', () => {
  const archive = (headers: Headers, id: string) => ask('api/exports/[id]', 'GET', headers, { params: { id } })

  beforeAll(async () => {
    process.env.DATA_DIR = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-exports-'))
    forgetConfig()
    for (const firm of [mine, theirs]) {
      const folder = path.join(process.env.DATA_DIR, 'exports', firm.companyId)
      fs.mkdirSync(folder, { recursive: true })
      fs.writeFileSync(path.join(folder, `${firm.exportId}.zip`), 'the archive')
    }
  })
  afterAll(() => fs.rmSync(process.env.DATA_DIR ?? '', { recursive: true }))

  test('is given to the owner of the firm, as a file that nobody keeps, and it is noted who took it', async () => {
    const answer = await archive(owner.headers, mine.exportId)
    expect(answer.status).toBe(200)
    expect(await answer.text()).toBe('the archive')
    expect(answer.headers.get('cache-control')).toBe('no-store')
    const noted = `select person_id from audit_entry where company_id = $1 and operation = 'exports.download: downloaded'`
    expect((await db.query(noted, [mine.companyId])).rows).toEqual([{ person_id: owner.personId }])
  })
  test('of another firm is answered like one that does not exist', async () => {
    const none = newId()
    const missing = await plain(await archive(owner.headers, none), none)
    expect(await plain(await archive(owner.headers, theirs.exportId), theirs.exportId)).toEqual(missing)
    expect(missing.status).toBe(404)
    expect((await archive(owner.headers, '..%2F..%2Fsecret')).status).toBe(404)
    expect((await archive(stranger.headers, theirs.exportId)).status).toBe(200)
  })
  test.each(['dispatcher', 'technician'] as const)('is not given to a %s', async (role) => {
    const { headers } = await makeCaller(mine.companyId, role)
    expect((await archive(headers, mine.exportId)).status).toBe(403)
  })
})

describe('the rebed plan of a bed', () => {
  const plan = (headers: Headers, bedId: string) => ask('api/beds/[bedId]/plan', 'GET', headers, { params: { bedId } })

  test.each(['owner', 'dispatcher', 'technician'] as const)('is given to a %s of the firm, as a file that nobody keeps', async (role) => {
    const { headers } = await makeCaller(mine.companyId, role)
    const answer = await plan(headers, mine.bedId)
    expect(answer.status).toBe(200)
    expect(answer.headers.get('content-type')).toBe('application/pdf')
    expect(answer.headers.get('cache-control')).toBe('no-store')
    expect(answer.headers.get('content-disposition')).toMatch(/^attachment; filename="rebed-plan-[a-z0-9-]+\.pdf"$/)
    expect(
      Buffer.from(await answer.arrayBuffer())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-')
  })
  test('of another firm is answered like that of a bed that does not exist', async () => {
    const none = newId()
    const missing = await plain(await plan(owner.headers, none), none)
    expect(await plain(await plan(owner.headers, theirs.bedId), theirs.bedId)).toEqual(missing)
    expect(missing.status).toBe(404)
    expect((await plan(owner.headers, 'no-id')).status).toBe(404)
    expect((await plan(stranger.headers, theirs.bedId)).status).toBe(200)
  })
})

describe('a picture of a visit', () => {
  const see = (headers: Headers, id: string) => ask('api/pictures/[id]', 'GET', headers, { params: { id } })
  const soFar = (headers: Headers, id: string) => ask('api/pictures/[id]/upload', 'HEAD', headers, { params: { id } })
  const send = (headers: Headers, id: string, offset = '0') => {
    const sent = new Headers(headers)
    sent.set('upload-offset', offset)
    sent.set('content-type', 'application/offset+octet-stream')
    return ask('api/pictures/[id]/upload', 'PATCH', sent, { params: { id }, body: 'ab' })
  }
  let folder: string

  beforeAll(() => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-pictures-'))
    process.env.DATA_DIR = folder
    forgetConfig()
    for (const firm of [mine, theirs]) {
      fs.mkdirSync(path.join(folder, 'files', firm.companyId), { recursive: true })
      fs.writeFileSync(path.join(folder, 'files', firm.companyId, firm.pictureId), 'jpeg')
    }
  })
  afterAll(() => fs.rmSync(folder, { recursive: true }))

  test.each(['owner', 'dispatcher', 'technician'] as const)('is shown to a %s of the firm, as a file that nobody keeps', async (role) => {
    const { headers } = await makeCaller(mine.companyId, role)
    const answer = await see(headers, mine.pictureId)
    expect([answer.status, answer.headers.get('content-type'), answer.headers.get('cache-control')]).toEqual([
      200,
      'image/jpeg',
      'no-store',
    ])
    expect(await answer.text()).toBe('jpeg')
  })
  test('of another firm is answered like one that does not exist, seen, asked for and sent', async () => {
    for (const way of [see, soFar, send]) {
      const none = newId()
      const missing = await plain(await way(owner.headers, none), none)
      expect(missing.status).toBe(404)
      expect(await plain(await way(owner.headers, theirs.pictureId), theirs.pictureId)).toEqual(missing)
      expect(await plain(await way(owner.headers, theirs.signedPictureId), theirs.signedPictureId)).toEqual(missing)
    }
    expect((await see(owner.headers, '..%2F..%2Fsecret')).status).toBe(404)
    expect((await see(stranger.headers, theirs.pictureId)).status).toBe(200)
    expect(fs.existsSync(path.join(folder, 'half-sent'))).toBe(false)
  })
  test('goes on where it is, says how far that is, and is refused elsewhere and from another site’s page', async () => {
    expect((await send(owner.headers, mine.signedPictureId, '2')).status).toBe(409)
    const sent = await send(owner.headers, mine.signedPictureId)
    expect([sent.status, sent.headers.get('upload-offset'), sent.headers.get('tus-resumable')]).toEqual([204, '2', '1.0.0'])
    const there = await soFar(owner.headers, mine.signedPictureId)
    expect([there.status, there.headers.get('upload-offset'), there.headers.get('upload-length')]).toEqual([200, '2', '4'])
    // Still on its way: nobody sees half a picture.
    expect((await see(owner.headers, mine.signedPictureId)).status).toBe(404)
    const { PATCH } = (await import('../../apps/web/app/api/pictures/[id]/upload/route.ts')) as unknown as { PATCH: Handler }
    const foreign = new Headers(owner.headers)
    foreign.set('sec-fetch-site', 'cross-site')
    const request = new Request(`${HOME}/api/pictures/x/upload`, { method: 'PATCH', headers: foreign, body: 'cd' })
    expect((await PATCH(request, { params: Promise.resolve({ id: mine.signedPictureId }) })).status).toBe(403)
    expect(fs.readFileSync(path.join(folder, 'half-sent', mine.companyId, mine.signedPictureId), 'utf8')).toBe('ab')
  })
})

describe('a file sent in', () => {
  const send = (headers: Headers) => ask('api/imports', 'POST', headers, { body: 'Name,Street,Tank\nHanna Vale,Weir Road 8,10x54\n' })

  test('lands in the firm of who sends it, and in no other', async () => {
    const before = await fingerprint(db, TABLES.tenant, [theirs.companyId])
    const answer = await send(owner.headers)
    expect(answer.status).toBe(201)
    const { batchId } = (await answer.json()) as { batchId: string }
    const { rows } = await db.query('select company_id from import_batch where id = $1', [batchId])
    expect(rows).toEqual([{ company_id: mine.companyId }])
    const after = await fingerprint(db, TABLES.tenant, [theirs.companyId])
    for (const key of Object.keys(before)) expect([key, after[key]]).toEqual([key, before[key]])
  })
  test('is refused from a technician, and from another site’s page, and leaves nothing', async () => {
    const before = await fingerprint(db, ['import_batch', 'import_row'], [mine.companyId])
    const { headers } = await makeCaller(mine.companyId, 'technician')
    expect((await send(headers)).status).toBe(403)
    const { POST } = (await import('../../apps/web/app/api/imports/route.ts')) as { POST: (request: Request) => Promise<Response> }
    const foreign = new Headers(owner.headers)
    foreign.set('sec-fetch-site', 'cross-site')
    expect((await POST(new Request(`${HOME}/api/imports`, { method: 'POST', headers: foreign, body: 'Name\nx' }))).status).toBe(403)
    const after = await fingerprint(db, ['import_batch', 'import_row'], [mine.companyId])
    for (const key of Object.keys(before).filter((one) => one.startsWith('import'))) expect(after[key]).toBe(before[key])
  })
})

describe('the stream of changes', () => {
  /** Reads an open stream until a text is seen, or the stream ends. */
  async function hear(answer: Response, text: string): Promise<string> {
    const reader = answer.body?.getReader()
    const decoder = new TextDecoder()
    let heard = ''
    for (let piece = await reader?.read(); piece && !piece.done; piece = await reader?.read()) {
      heard += decoder.decode(piece.value)
      if (heard.includes(text)) break
    }
    await reader?.cancel()
    return heard
  }
  const announce = (firm: FirmRecords, id: string) => inCompany(firm, (tx) => commandTools(tx, firm, 'test', null).announce('site', id))

  test('tells of one’s own firm, within two seconds, and nothing of another', { timeout: 30_000 }, async () => {
    const answer = await ask('api/live', 'GET', owner.headers)
    expect(answer.status).toBe(200)
    const begun = performance.now()
    await announce(theirs, theirs.siteId)
    await announce(mine, mine.siteId)
    const heard = await hear(answer, mine.siteId)
    expect(performance.now() - begun).toBeLessThan(2000)
    expect(heard).toContain(mine.siteId)
    expect(heard).not.toContain(theirs.siteId)
  })

  /** Milliseconds until an open stream says that it has ended. */
  async function endsAfter(caller: Caller, change: () => Promise<unknown>): Promise<number> {
    const answer = await ask('api/live', 'GET', caller.headers)
    const begun = performance.now()
    await change()
    expect(await hear(answer, 'event: ended')).toContain('event: ended')
    return performance.now() - begun
  }

  // Without the database's own notice it would be asked every five seconds.
  test.each<[string, (caller: Caller) => Promise<unknown>, number]>([
    ['the membership has ended', (caller) => endMembership(caller.personId, mine.companyId), 403],
    ['the role is another', (caller) => addMembership(caller.personId, mine.companyId, 'technician'), 200],
    ['the session was ended', (caller) => db.query('delete from session where id = $1', [caller.sessionId]), 401],
  ])('ends within a second when %s, and the next request knows it', { timeout: 30_000 }, async (_, change, status) => {
    const caller = await makeCaller(mine.companyId, 'dispatcher')
    expect(await endsAfter(caller, () => change(caller))).toBeLessThan(1000)
    expect((await ask('api/live', 'GET', caller.headers)).status).toBe(status)
  })
})
