import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { makePublicToken } from '@almanac/identity/public-token'
import { beginGuide } from '@almanac/operations/guides/begin-guide'
import { readGuideLink } from '@almanac/operations/guides/guide-link'
import { withdrawGuide } from '@almanac/operations/guides/withdraw-guide'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { NOW } from '../support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

vi.mock('server-only', () => ({}))

type Handler = (request: Request, context: { params: Promise<{ token: string }> }) => Promise<Response>
const file = path.resolve(import.meta.dirname, '../../apps/web/app/api/measure/[token]/route.ts')

let db: pg.Client
let mine: FirmRecords
let theirs: FirmRecords
const tokenOf = ({ companyId }: FirmRecords, id: string) => makePublicToken('measure', { companyId, id })

async function send(token: string, body: string) {
  const { POST } = (await import(file)) as { POST: Handler }
  const answer = await POST(new Request('http://localhost/', { method: 'POST', body }), { params: Promise.resolve({ token }) })
  return { status: answer.status, to: answer.headers.get('location')?.replace(token, '<token>') ?? null }
}
const kept = async (firm = mine) =>
  (await db.query('select measure, value_in, entered, version from guide_entry where company_id = $1 order by measure', [firm.companyId]))
    .rows
const show = (firm = mine, guideId = firm.guideId) => readGuideLink({ companyId: firm.companyId, guideId })

beforeAll(async () => {
  db = await inspector()
  process.env.REQUESTS_PER_MINUTE = '100000'
})
beforeEach(async () => {
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

test('what an owner types is kept as every amount is read, and typed again it takes the place of what was there', async () => {
  const token = tokenOf(mine, mine.guideId)
  expect(await send(token, 'measure=around&value=32 1/2&unit=in')).toEqual({ status: 303, to: '/measure/<token>?step=height' })
  // 122 cm are 48.03 in: 122 / 2.54.
  expect(await send(token, 'measure=height&value=122&unit=cm&l=es')).toEqual({ status: 303, to: '/measure/<token>?step=end&l=es' })
  expect(await kept()).toEqual([
    { measure: 'around', value_in: 32.5, entered: { value: 32.5, unit: 'in' }, version: 2 },
    { measure: 'height', value_in: expect.closeTo(48.03, 2), entered: { value: 122, unit: 'cm' }, version: 1 },
  ])
})

test.each([
  ['', '/measure/<token>'],
  ['measure=all&value=3&unit=in', '/measure/<token>'],
  ['measure=around&value=&unit=in', '/measure/<token>?step=around&said=unread'],
  ['measure=around&value=about a foot&unit=in', '/measure/<token>?step=around&said=unread'],
  ['measure=around&value=3&unit=in', '/measure/<token>?step=around&said=impossible'],
  ['measure=height&value=4800&unit=in', '/measure/<token>?step=height&said=impossible'],
])('“%s” changes nothing, and is asked again', async (body, to) => {
  const before = await kept()
  expect(await send(tokenOf(mine, mine.guideId), body)).toEqual({ status: 303, to })
  expect(await kept()).toEqual(before)
})

test('reading changes nothing, and shows no name, number or address of the customer', async () => {
  const before = await kept()
  const shown = await show()
  expect(shown).toMatchObject({ open: true, entries: [{ measure: 'around', valueIn: 31.5 }] })
  expect(JSON.stringify(shown)).not.toMatch(/hanna|vale|orchard|0134/i)
  expect(await kept()).toEqual(before)
})

test('expired, withdrawn, replaced by a newer one, or of a house that was sold since, it shows and takes nothing', async () => {
  const token = tokenOf(mine, mine.guideId)
  const gone = async () => {
    const before = await kept()
    await send(token, 'measure=around&value=40&unit=in')
    expect(await kept()).toEqual(before)
    expect(await show()).toMatchObject({ open: false, entries: [] })
  }
  setClock(() => new Date('2026-12-09T16:00:01Z'))
  await gone()
  setClock(() => new Date(NOW))
  expect(await show()).toMatchObject({ open: true })
  await db.query(`update tenure set to_day = '2026-12-02' where company_id = $1`, [mine.companyId])
  await db.query(`insert into tenure (company_id, id, site_id, customer_id, from_day) values ($1, $2, $3, $4, '2026-12-03')`, [
    ...[mine.companyId, newId(), mine.siteId, mine.otherCustomerId],
  ])
  await gone()
  await db.query(`delete from tenure where company_id = $1 and from_day = '2026-12-03'`, [mine.companyId])
  const { guideId } = await beginGuide(mine, { commandId: newId(), softenerId: mine.softenerId })
  await gone()
  expect(await show(mine, guideId)).toMatchObject({ open: true, entries: [] })
  await withdrawGuide(mine, { commandId: newId(), guideId, version: 1 })
  expect(await show(mine, guideId)).toMatchObject({ open: false })
})

test('of another company’s guide, for another purpose, or guessed, it takes nothing', async () => {
  const before = [await kept(), await kept(theirs)]
  const body = 'measure=around&value=40&unit=in'
  await send(tokenOf(mine, theirs.guideId), body)
  const other = makePublicToken('calendar', { companyId: mine.companyId, id: mine.guideId })
  expect((await send(other, body)).status).toBe(404)
  expect((await send('A'.repeat(70), body)).status).toBe(404)
  expect([await kept(), await kept(theirs)]).toEqual(before)
})
