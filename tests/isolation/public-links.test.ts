import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { makePublicToken, readPublicToken } from '@almanac/identity/public-token'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { NOW } from '../support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

vi.mock('server-only', () => ({}))

type Handler = (request: Request, context: { params: Promise<{ token: string }> }) => Promise<Response>
const api = path.resolve(import.meta.dirname, '../../apps/web/app/api')
const route = async (name: string, method: 'GET' | 'POST') =>
  ((await import(path.join(api, name, 'route.ts'))) as Record<string, Handler>)[method] as Handler

let db: pg.Client
let mine: FirmRecords
let theirs: FirmRecords

async function calendar(token: string) {
  const answer = await (await route('calendar/[token]', 'GET'))(new Request('http://localhost/'), { params: Promise.resolve({ token }) })
  return { status: answer.status, text: await answer.text(), headers: answer.headers }
}
async function choose(token: string, window: string) {
  const body = new URLSearchParams({ window })
  const request = new Request('http://localhost/', { method: 'POST', body })
  const answer = await (await route('arrival/[token]', 'POST'))(request, { params: Promise.resolve({ token }) })
  return { status: answer.status, to: answer.headers.get('location') }
}
const feedToken = (firm: FirmRecords) => makePublicToken('calendar', { companyId: firm.companyId, id: firm.feedId })
const offerToken = (firm: FirmRecords) => makePublicToken('arrival-windows', { companyId: firm.companyId, id: firm.offerId })
const stateOf = async (visitId: string) => (await db.query('select state from visit where id = $1', [visitId])).rows[0]?.state

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = '100000'
  setClock(() => new Date(NOW))
  mine = await makeFirmRecords(db)
  theirs = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a token', () => {
  test('gives back what it was made for, and only for its purpose', () => {
    const record = { companyId: mine.companyId, id: mine.feedId }
    const token = makePublicToken('calendar', record)
    expect(readPublicToken('calendar', token)).toEqual(record)
    expect(readPublicToken('arrival-windows', token)).toBeNull()
  })
  test('with any one sign changed is none', () => {
    const token = feedToken(mine)
    for (let at = 0; at < token.length; at++) {
      const other = token[at] === 'A' ? 'B' : 'A'
      const changed = token.slice(0, at) + other + token.slice(at + 1)
      // The last sign of base64 may carry bits that no byte uses: then the bytes, and so the token, are the same.
      if (Buffer.from(changed, 'base64url').equals(Buffer.from(token, 'base64url'))) continue
      expect([at, readPublicToken('calendar', changed)]).toEqual([at, null])
    }
  })
  test.each(['', 'x', '../../etc', 'A'.repeat(70), 'A'.repeat(5000)])('%j is refused', (token) => {
    expect(readPublicToken('calendar', token)).toBeNull()
  })
})

describe('a calendar address', () => {
  test('shows its colleague’s visits, where and when, but no customer’s name or telephone', async () => {
    const { status, text, headers } = await calendar(feedToken(mine))
    expect(status).toBe(200)
    expect(headers.get('content-type')).toContain('text/calendar')
    expect(headers.get('cache-control')).toBe('no-store')
    expect(text).toContain(mine.visitId)
    expect(text).toContain('Orchard Lane 14')
    expect(text).not.toContain(theirs.visitId)
    // A time that is only offered is no visit yet.
    expect(text).not.toContain(mine.offeredVisitId)
    for (const secret of ['Hanna', '555 0134', 'orchard.example']) expect(text).not.toContain(secret)
  })
  test('of a feed that is another firm’s, or none at all, is answered alike', async () => {
    const crossed = makePublicToken('calendar', { companyId: mine.companyId, id: theirs.feedId })
    const made = makePublicToken('calendar', { companyId: mine.companyId, id: newId() })
    const wrong = await calendar(crossed)
    expect(wrong.status).toBe(404)
    expect(wrong.text).toBe((await calendar(made)).text)
    expect(wrong.text).toBe((await calendar('nonsense')).text)
  })
  test('ends when it is ended, and when its colleague has left', async () => {
    const { rows } = await db.query('select colleague_id from calendar_feed where id = $1', [theirs.feedId])
    expect((await calendar(feedToken(theirs))).status).toBe(200)
    await db.query('update colleague set archived_at = now() where id = $1', [rows[0]?.colleague_id])
    expect((await calendar(feedToken(theirs))).status).toBe(404)
    await db.query('update colleague set archived_at = null where id = $1', [rows[0]?.colleague_id])
    await db.query('update calendar_feed set ended_at = now() where id = $1', [theirs.feedId])
    expect((await calendar(feedToken(theirs))).status).toBe(404)
  })
})

describe('a customer’s link', () => {
  test('books only what it offers', async () => {
    expect(await choose(offerToken(mine), theirs.offeredVisitId)).toEqual({ status: 404, to: null })
    expect(await choose(offerToken(mine), mine.visitId)).toEqual({ status: 404, to: null })
    expect((await choose(offerToken(mine), 'nonsense')).to).toContain('answer=none')
    expect([await stateOf(mine.offeredVisitId), await stateOf(theirs.offeredVisitId)]).toEqual(['offered', 'offered'])
    const done = await choose(offerToken(mine), mine.offeredVisitId)
    expect(done).toEqual({ status: 303, to: `/arrival/${offerToken(mine)}` })
    expect([await stateOf(mine.offeredVisitId), await stateOf(theirs.offeredVisitId)]).toEqual(['booked', 'offered'])
  })
  test('gives its calendar file once a time is chosen, and not before', async () => {
    const file = async (firm: FirmRecords) => {
      const handler = await route('arrival/[token]/calendar', 'GET')
      return handler(new Request('http://localhost/'), { params: Promise.resolve({ token: offerToken(firm) }) })
    }
    expect((await file(theirs)).status).toBe(404)
    const answer = await file(mine)
    expect(answer.status).toBe(200)
    expect(await answer.text()).toContain('DTSTART:20261203T200000Z')
  })
})
