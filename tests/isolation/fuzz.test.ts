import fs from 'node:fs'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { ADDRESS_HEADER } from '@almanac/identity/client-address'
import { makePublicToken } from '@almanac/identity/public-token'
import { archiveFile } from '@almanac/operations/keeping/export-place'
import { setClock } from '@almanac/runtime/clock'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import type { Body } from '../support/fuzz/hostile-bodies.ts'
import { Chance } from '../support/fuzz/random.ts'
import { eachProcedure, eachRoute, type FuzzRequest, type Known, nextRequest } from '../support/fuzz/requests.ts'
import { NOW } from '../support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'
import { type Caller, makeCaller } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

const SEED = 20_261_129
const REQUESTS = 500
const SLOW_MS = 3_000
/** Hours whose end chance put before their beginning: two fields that are right alone. */
const WRONG_WAY_ROUND = /cannot end before it begins|must end after/
/** How an input is answered that the schema does not take. */
const NOT_TAKEN = 'We couldn’t read this, so nothing was saved.'
const HOME = 'http://localhost:3000'
const app = path.resolve(import.meta.dirname, '../../apps/web/app')

type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>
/** The routes by address; a page and an address of no route are the framework's, and the script `bench -- fuzz` asks those of a whole server. */
const ROUTES: [RegExp, string, string][] = [
  [/^\/api\/rpc\/()/, 'api/rpc/[[...rest]]', ''],
  [/^\/api\/auth\/()/, 'api/auth/[...all]', ''],
  [/^\/api\/imports(?:\?|$)()/, 'api/imports', ''],
  [/^\/api\/beds\/([^/]+)\/plan/, 'api/beds/[bedId]/plan', 'bedId'],
  [/^\/api\/imports\/([^/]+)\/problems/, 'api/imports/[id]/problems', 'id'],
  [/^\/api\/exports\/([^/]+)/, 'api/exports/[id]', 'id'],
  [/^\/api\/arrival\/([^/]+)\/calendar/, 'api/arrival/[token]/calendar', 'token'],
  [/^\/api\/arrival\/([^/]+)$/, 'api/arrival/[token]', 'token'],
  [/^\/api\/calendar\/([^/]+)$/, 'api/calendar/[token]', 'token'],
  [/^\/api\/letters$()/, 'api/letters', ''],
  [/^\/api\/pictures\/([^/]+)\/upload$/, 'api/pictures/[id]/upload', 'id'],
  [/^\/api\/pictures\/([^/]+)$/, 'api/pictures/[id]', 'id'],
  [/^\/api\/visits\/([^/]+)\/report$/, 'api/visits/[visitId]/report', 'visitId'],
  [/^\/api\/join\/([^/]+)$/, 'api/join/[token]', 'token'],
  [/^\/api\/logo$()/, 'api/logo', ''],
  [/^\/api\/mail-link$()/, 'api/mail-link', ''],
  [/^\/api\/measure\/([^/]+)$/, 'api/measure/[token]', 'token'],
  [/^\/api\/measure\/([^/]+)\/act$/, 'api/measure/[token]/act', 'token'],
  [/^\/api\/measure\/([^/]+)\/photograph$/, 'api/measure/[token]/photograph', 'token'],
  [/^\/api\/messages\/([^/]+)\/report$/, 'api/messages/[id]/report', 'id'],
  [/^\/api\/new-email\/([^/]+)$/, 'api/new-email/[token]', 'token'],
  [/^\/api\/new-password\/([^/]+)$/, 'api/new-password/[token]', 'token'],
  [/^\/api\/set-up\/([^/]+)$/, 'api/set-up/[token]', 'token'],
  [/^\/api\/reminder\/([^/]+)$/, 'api/reminder/[token]', 'token'],
  [/^\/api\/reminder\/([^/]+)\/stop$/, 'api/reminder/[token]/stop', 'token'],
  [/^\/healthz$()/, 'healthz', ''],
  [/^\/readyz$()/, 'readyz', ''],
]
/** A stream without an end: asked in `routes.test.ts`. */
const ENDLESS = 'api/live'

let db: pg.Client
let firm: FirmRecords
let callers: Record<FuzzRequest['as'], Caller | null>

const whole = ({ head, repeat, times, tail }: Body) => head + repeat.repeat(times) + tail
/** What the framework's router would hand over; null for an address that the server's front turns away. */
function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text)
  } catch {
    return null
  }
}

async function ask(request: FuzzRequest): Promise<{ status: number; text: string } | null> {
  const found = ROUTES.find(([pattern]) => pattern.test(request.path))
  if (!found) return null
  const [pattern, route, param] = found
  const value = decoded(pattern.exec(request.path)?.[1] ?? '')
  if (value === null || decoded(request.path) === null) return null
  const headers = new Headers(request.headers)
  headers.set('origin', HOME)
  headers.set(ADDRESS_HEADER, '192.0.2.1')
  headers.set('cookie', callers[request.as]?.headers.get('cookie') ?? '')
  const body = request.body && request.method !== 'GET' ? whole(request.body) : undefined
  const module = (await import(path.join(app, route, 'route.ts'))) as Record<string, Handler>
  const handler = module[request.method]
  if (!handler) return null
  const answer = await handler(new Request(HOME + request.path, { method: request.method, headers, body }), {
    params: Promise.resolve(param ? { [param]: value } : {}),
  })
  return { status: answer.status, text: await answer.text() }
}

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = '1000000'
  process.env.SIGN_IN_TRIES_PER_MINUTE = '1000'
  setClock(() => new Date(NOW))
  const owner = await makeCaller()
  firm = await makeFirmRecords(db, owner.personId)
  callers = { owner: await makeCaller(firm.companyId), technician: await makeCaller(firm.companyId, 'technician'), nobody: null }
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('every route is asked', () => {
  const routes = fs.globSync('**/route.ts', { cwd: app }).map(path.dirname)
  expect([...ROUTES.map(([, route]) => route), ENDLESS].sort()).toEqual(routes.sort())
})

test(`a request to each procedure and route and ${REQUESTS} others with seed ${SEED}: no failure of ours, no stack, none that lasts`, {
  timeout: 480_000,
}, async () => {
  const chance = new Chance(SEED)
  const archive = archiveFile(firm.companyId, firm.exportId)
  fs.mkdirSync(path.dirname(archive), { recursive: true })
  fs.writeFileSync(archive, '')
  const known: Known & { exportId: string } = {
    ids: Object.values(firm),
    arrivalTokens: [makePublicToken('arrival-windows', { companyId: firm.companyId, id: firm.offerId })],
    reminderTokens: [makePublicToken('reminder', { companyId: firm.companyId, id: firm.reminderId })],
    calendarTokens: [makePublicToken('calendar', { companyId: firm.companyId, id: firm.feedId })],
    measureTokens: [makePublicToken('measure', { companyId: firm.companyId, id: firm.guideId })],
    bedId: firm.bedId,
    batchId: firm.batchId,
    exportId: firm.exportId,
    // Whole bodies and hard files of a hundred megabytes are the script's, against a served app.
    mostBytes: 100_000,
    mostFileBytes: 10_000,
  }
  const wrong: string[] = []
  const unreached: string[] = []
  const statuses = new Map<number, number>()
  const each = eachProcedure(chance, known)
  const requests = [...each, ...eachRoute(known), ...Array.from({ length: REQUESTS }, () => nextRequest(chance, known))]
  for (const [turn, request] of requests.entries()) {
    const begun = process.cpuUsage()
    const answer = await ask(request)
    const { user, system } = process.cpuUsage(begun)
    if (!answer) continue
    if (request.what === 'route' && turn < each.length + eachRoute(known).length && ![200, 201, 303].includes(answer.status))
      wrong.push(`${request.path} is there, and was answered ${answer.status} ${answer.text.slice(0, 300)}`)
    statuses.set(answer.status, (statuses.get(answer.status) ?? 0) + 1)
    const isTaken = !answer.text.includes(NOT_TAKEN) || WRONG_WAY_ROUND.test(answer.text)
    const sent = request.body ? whole(request.body).slice(0, 600) : ''
    if (turn < each.length && (answer.status === 401 || answer.status === 403 || !isTaken))
      unreached.push(`${request.what}: ${sent} → ${answer.status} ${answer.text.slice(0, 300)}`)
    if (answer.status >= 500) wrong.push(`${turn} ${request.what} ${request.path} ${answer.status}: ${sent} → ${answer.text.slice(0, 300)}`)
    if (/\bat [\w.<>]+ \(|node_modules|\.ts:\d+/.test(answer.text))
      wrong.push(`${turn} ${request.what} tells a stack: ${answer.text.slice(0, 300)}`)
    // By the processor's time: other tests share the machine.
    if ((user + system) / 1000 > SLOW_MS)
      wrong.push(`${turn} ${request.what} ${request.path}: ${Math.round((user + system) / 1000)} ms: ${sent}`)
  }
  expect(wrong).toEqual([])
  // Not all were turned away at the door: the values reach the operations.
  expect(statuses.get(200)).toBeGreaterThan(REQUESTS / 20)
  // Each procedure's handler is met, so that a failure in any of them shows; hours that came out the wrong way round are forgiven.
  expect(unreached).toEqual([])
})
