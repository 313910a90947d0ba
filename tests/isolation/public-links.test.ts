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
import { makeCaller } from './signed-in-call.ts'

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

describe('the office’s calendar address', () => {
  test('shows all day sheets of its own company, for as long as whoever asked for it works in the office', async () => {
    const dispatcher = await makeCaller(mine.companyId, 'dispatcher')
    const id = newId()
    await db.query('insert into calendar_feed (company_id, id, person_id, created_at) values ($1, $2, $3, now())', [
      ...[mine.companyId, id, dispatcher.personId],
    ])
    const token = makePublicToken('calendar', { companyId: mine.companyId, id })
    const { status, text } = await calendar(token)
    expect(status).toBe(200)
    expect(text).toContain(mine.visitId)
    expect(text).toContain(mine.rebedVisitId)
    expect(text).not.toContain(mine.offeredVisitId)
    for (const secret of ['Hanna', '555 0134', 'orchard.example', theirs.visitId]) expect(text).not.toContain(secret)
    await db.query(`update membership set role = 'technician' where person_id = $1`, [dispatcher.personId])
    expect((await calendar(token)).status).toBe(404)
    await db.query(`update membership set role = 'dispatcher' where person_id = $1`, [dispatcher.personId])
    expect((await calendar(token)).status).toBe(200)
    await db.query('update membership set ended_at = now() where person_id = $1', [dispatcher.personId])
    expect((await calendar(token)).status).toBe(404)
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

describe('the link in a reminder', () => {
  const tokenOf = (companyId: string, id: string) => makePublicToken('reminder', { companyId, id })
  const send = async (token: string, body: string, name = 'reminder/[token]', method: 'GET' | 'POST' = 'POST') => {
    const request = new Request('http://localhost/', method === 'GET' ? {} : { method, body })
    const answer = await (await route(name, method))(request, { params: Promise.resolve({ token }) })
    return { status: answer.status, text: await answer.text(), to: answer.headers.get('location') }
  }
  const stateOfFirm = async ({ companyId }: FirmRecords) =>
    (
      await db.query(
        `select (select json_agg(a order by id) from reminder_answer a where company_id = $1) as answers,
          (select json_agg(c order by id) from consent c where company_id = $1) as consents,
          (select json_agg(j order by id) from job j where company_id = $1) as jobs`,
        [companyId],
      )
    ).rows
  beforeAll(async () => {
    for (const { companyId } of [mine, theirs]) {
      await db.query('delete from reminder_answer where company_id = $1', [companyId])
      await db.query(`update reminder set link_until = '2027-06-01' where company_id = $1`, [companyId])
    }
  })

  test('followed by whatever reads mails changes nothing', async () => {
    const before = await stateOfFirm(mine)
    const token = tokenOf(mine.companyId, mine.reminderId)
    expect(await send(token, '', 'reminder/[token]/stop', 'GET')).toMatchObject({ status: 303, to: `/reminder/${token}` })
    expect(await stateOfFirm(mine)).toEqual(before)
  })

  test.each(['', 'answer=done', 'answer=done&day=soon&by=self', 'answer=days&days=%20', 'answer=not-now&months=5', 'answer=all', '%00'])(
    'with “%s” says that something was missing, and changes nothing',
    async (body) => {
      const before = await stateOfFirm(mine)
      const token = tokenOf(mine.companyId, mine.reminderId)
      expect(await send(token, body)).toMatchObject({ status: 303, to: `/reminder/${token}?said=nothing` })
      expect(await stateOfFirm(mine)).toEqual(before)
    },
  )

  test('of another company’s reminder, or made for another purpose, opens and changes nothing', async () => {
    const before = [await stateOfFirm(mine), await stateOfFirm(theirs)]
    await send(tokenOf(mine.companyId, theirs.reminderId), 'answer=moved')
    await send(tokenOf(mine.companyId, theirs.reminderId), '', 'reminder/[token]/stop')
    expect(await send(makePublicToken('calendar', { companyId: mine.companyId, id: mine.reminderId }), 'answer=moved')).toMatchObject({
      status: 404,
    })
    expect([await stateOfFirm(mine), await stateOfFirm(theirs)]).toEqual(before)
  })

  test('takes somebody off with one click (RFC 8058, 3.2: no cookie, no page), and holds no name or number', async () => {
    const token = tokenOf(mine.companyId, mine.reminderId)
    expect(await send(token, 'List-Unsubscribe=One-Click', 'reminder/[token]/stop')).toMatchObject({ status: 204 })
    const { rows } = await db.query('select granted, source from consent where company_id = $1', [mine.companyId])
    expect(rows).toEqual([{ granted: false, source: 'link' }])
    expect(Buffer.from(token, 'base64url').toString('latin1')).not.toMatch(/hanna|vale|orchard|0134/i)
  })
})
