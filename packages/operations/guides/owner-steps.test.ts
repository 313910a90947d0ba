import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { fileStore } from '@almanac/files/file-store'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { cameraPicture, HIDDEN } from '../../../tests/support/camera-picture.ts'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { orderKit } from '../jobs/order-kit.ts'
import { proposeIn } from '../jobs/propose-job.ts'
import { eraseCustomer } from '../keeping/erase-customer.ts'
import { beginGuide } from './begin-guide.ts'
import { readGuideLink } from './guide-link.ts'
import { fixHold, releaseHold, sendSteps, visitInstead } from './office-steps.ts'
import { type OwnerAct, ownerActs } from './owner-steps.ts'
import { takePhotograph } from './take-photograph.ts'
import { withdrawGuide } from './withdraw-guide.ts'

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'guides-'))
let before: string | undefined
let db: pg.Client
let firm: FirmRecords
let guideId: string
let photo: Uint8Array

const of = () => ({ companyId: firm.companyId, guideId })
const link = (asked?: Parameters<typeof readGuideLink>[1]) => readGuideLink(of(), asked)
const act = (what: OwnerAct) => ownerActs(of(), what, proposeIn)
const rows = async (sql: string) => (await db.query(sql, [firm.companyId])).rows
const guide = async () => (await db.query('select * from owner_guide where id = $1', [guideId])).rows[0]
const named = async () => ({ commandId: newId(), guideId, version: (await guide()).version as number })
const send = async () => sendSteps(firm, { ...(await named()), bedId: firm.bedId })

/** What is answered at the step that is shown, so that the work goes on: ticks, and the answer that the trade calls right. */
async function answers(): Promise<Record<string, string>> {
  const right = ['none', 'holds', 'sound', 'clear', 'draws']
  const asks = (await link())?.step?.asks ?? []
  return Object.fromEntries(
    asks.map(({ id, choices }) => [id, choices.find((one) => right.includes(one.value))?.value ?? (choices[0]?.value || 'yes')]),
  )
}
const next = async () => act({ kind: 'next', step: (await link())?.step?.id ?? '', answers: await answers() })
const photograph = async (kind: 'label' | 'cap' | 'bypass', said?: Record<string, string>) =>
  takePhotograph(of(), { kind, bytes: photo, answers: said ?? (await answers()) })
/** Goes on until a step, or to the end, with the office letting every hold point pass. */
async function walkTo(step: string | null): Promise<string[]> {
  const seen: string[] = []
  for (let i = 0; i < 40; i++) {
    const shown = (await link())?.step
    if (!shown || shown.id === step) break
    seen.push(shown.id)
    if (shown.hold) {
      expect(await photograph(shown.hold)).toBe('kept')
      await releaseHold(firm, await named())
    } else expect(await next()).toBe('done')
  }
  return seen
}

beforeAll(async () => {
  before = process.env.DATA_DIR
  process.env.DATA_DIR = folder
  forgetConfig()
  db = await inspector()
  photo = await cameraPicture({ width: 64, height: 48 })
})
beforeEach(async () => {
  setClock(() => new Date(NOW))
  firm = await makeFirmRecords(db)
  guideId = (await beginGuide(firm, { commandId: newId(), softenerId: firm.softenerId })).guideId
})
afterAll(async () => {
  setClock()
  if (before === undefined) delete process.env.DATA_DIR
  else process.env.DATA_DIR = before
  forgetConfig()
  fs.rmSync(folder, { recursive: true, force: true })
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('an owner who rebeds step by step', () => {
  test('is sent the steps only where the last kept answer is go', async () => {
    await db.query(`update owner_decision set verdict = 'firm' where company_id = $1`, [firm.companyId])
    await expect(send()).rejects.toThrow(/Nobody has kept a go/)
    expect(await link()).toMatchObject({ state: 'measuring', step: null })
    await db.query(`update owner_decision set verdict = 'owner-with-helper' where company_id = $1`, [firm.companyId])
    await send()
    expect(await link()).toMatchObject({ state: 'working', step: { id: 'stop-and-refer', number: 1, now: true } })
    await expect(send()).rejects.toThrow(/sent already/)
  })

  test('sees the crew’s steps for this tank in order, one after the other, in the language of the page', async () => {
    await db.query(`update owner_decision set answers = '{"metalPipe": false}' where company_id = $1`, [firm.companyId])
    await send()
    const spanish = await link({ language: 'es' })
    expect(spanish?.step?.cautions[0]?.text).not.toBe((await link())?.step?.cautions[0]?.text)
    const seen = await walkTo(null)
    // The order of work of the trade's reference, § 10: pressure before power, the tank emptied before it is filled, the cap out before the valve is seated, then water.
    const order = [
      'prove-bypass',
      'pressure-off',
      'power-off',
      'remove-valve',
      'take-out-media',
      'pour-resin',
      'cap-out',
      'seat-valve',
      'reconnect',
    ]
    expect(seen.filter((one) => order.includes(one))).toEqual(order)
    expect(seen.indexOf('start-in-backwash')).toBe(seen.indexOf('reconnect') + 1)
    // No metal pipe, as was answered before the go: no jumper.
    expect(seen).not.toContain('bonding-jumper')
    expect(await link()).toMatchObject({ state: 'asked', step: null })
  })

  test('goes on once for a step pressed twice, not with something left open, and can look back', async () => {
    await send()
    expect(await act({ kind: 'next', step: 'stop-and-refer', answers: {} })).toBe('missing')
    const said = await answers()
    const press: OwnerAct = { kind: 'next', step: 'stop-and-refer', answers: said }
    expect([await act(press), await act(press)]).toEqual(['done', 'gone'])
    expect((await link())?.step?.id).toBe('check-water')
    expect((await link({ look: 'stop-and-refer' }))?.step).toMatchObject({ id: 'stop-and-refer', now: false })
    expect((await link({ look: 'cap-out' }))?.step?.id).toBe('check-water')
  })

  test('passes no hold point before the photo is here and the office has looked', async () => {
    await send()
    await walkTo('cap-out')
    expect(await next()).toBe('gone')
    await expect(releaseHold(firm, await named())).rejects.toThrow(/no photo to look at/)
    expect(await photograph('label')).toBe('kept')
    expect(await link()).toMatchObject({ state: 'holding', step: { id: 'cap-out', hold: 'cap' } })
    expect(await photograph('cap', {})).toBe('missing')
    expect(await photograph('cap')).toBe('kept')
    expect(await link()).toMatchObject({ state: 'looking' })
    expect(await next()).toBe('gone')
    await fixHold(firm, { ...(await named()), toFix: 'Show the open tube too.' })
    expect(await link()).toMatchObject({ state: 'holding', toFix: 'Show the open tube too.' })
    expect(await next()).toBe('gone')
    await photograph('cap')
    expect(await link()).toMatchObject({ state: 'looking', toFix: null })
    await releaseHold(firm, await named())
    expect(await link()).toMatchObject({ state: 'working', step: { id: 'seat-valve' } })
  })

  test('who says soft ends the old bed that day and begins one; the kit that we handed over says what is in it', async () => {
    const { jobId } = await orderKit(firm, { commandId: newId(), bedId: firm.bedId, way: 'collected' })
    await db.query(`update job set state = 'closed' where id = $1`, [jobId])
    await send()
    await walkTo(null)
    expect(await act({ kind: 'ended', end: 'soft' })).toBe('done')
    expect(await act({ kind: 'ended', end: 'hard' })).toBe('gone')
    const [old] = await rows(`select ended_latest::text as day from bed where company_id = $1 and id = '${firm.bedId}'`)
    const [bed] = await rows(`select * from bed where company_id = $1 and tank_id = '${firm.tankId}' and ended_latest is null`)
    // The firm's day at NOW.
    expect(old.day).toBe('2026-12-02')
    expect(bed.fact_sources).toMatchObject({ began: 'said by link 2026-12-02', resinKind: 'said by link 2026-12-02' })
    expect(bed.volume_ft3).toBeGreaterThan(0)
    expect(await link()).toMatchObject({ state: 'soft', ended: 'soft' })
  })

  test.each(['hard', 'beads', 'wrong'] as const)('who says %s is called, and the old bed stays', async (end) => {
    await send()
    await walkTo(null)
    await act({ kind: 'ended', end })
    expect(await link()).toMatchObject({ state: 'trouble', ended: end })
    expect(await rows(`select note from call_back where company_id = $1 and note like 'By the owner’s link%'`)).toHaveLength(1)
    expect((await rows(`select ended_latest from bed where company_id = $1 and id = '${firm.bedId}'`))[0].ended_latest).toBeNull()
  })
})

describe('it becomes a visit', () => {
  const jobs = () =>
    rows(`select kind, state, asked_for, due_latest::text as due from job where company_id = $1 and asked_for->>'by' = 'guide'`)

  test('by the owner with the tank open: due today, with where they stopped, and somebody calls', async () => {
    await send()
    await photograph('label')
    await walkTo('pour-resin')
    expect(await act({ kind: 'visit' })).toBe('done')
    const asked = { by: 'guide', step: 'pour-resin', stop: null, photographs: 1, aroundIn: null, heightIn: null }
    expect(await jobs()).toEqual([{ kind: 'rebed', state: 'proposed', asked_for: asked, due: '2026-12-02' }])
    expect(await link()).toMatchObject({ state: 'visit', step: null, left: { opening: 'open', heaterOff: true } })
    expect(await rows(`select note from call_back where company_id = $1 and note like 'By the owner’s link%Pour the resin%'`)).toHaveLength(
      1,
    )
    expect([await act({ kind: 'visit' }), await next()]).toEqual(['gone', 'gone'])
    expect(await jobs()).toHaveLength(1)
  })

  test('by an answer that ends the work, as a crew’s would: a crack, a bypass that lets water by', async () => {
    await send()
    await walkTo('prove-bypass')
    await act({ kind: 'next', step: 'prove-bypass', answers: { 'bypass-holds': 'leaks' } })
    expect(await link()).toMatchObject({ state: 'visit', left: { opening: 'shut-off' } })
  })

  test('by the office, from measuring on; nobody calls, and untouched it has the forecast’s days', async () => {
    await visitInstead(firm, await named(), proposeIn)
    expect(await jobs()).toMatchObject([{ kind: 'inspection' }])
    expect(await link()).toMatchObject({ state: 'visit', left: { opening: 'untouched', heaterOff: false } })
    await expect(visitInstead(firm, await named(), proposeIn)).rejects.toThrow(/a visit already/)
  })

  test.each(bedRenewingKinds)('of a bed that waits for its %s already there is no second job: somebody calls', async (kind) => {
    await send()
    await proposeAnother(kind)
    await visitInstead(firm, await named(), proposeIn)
    expect(await jobs()).toEqual([])
    expect(await rows(`select note from call_back where company_id = $1 and note like 'By the owner’s link%'`)).toHaveLength(1)
  })
  const proposeAnother = (kind: string) =>
    db.query(
      `insert into job (company_id, id, site_id, bed_id, kind, state, minutes, crew_size) values ($1, $2, $3, $4, $5, 'proposed', 90, 2)`,
      [firm.companyId, newId(), firm.siteId, firm.bedId, kind],
    )
})

describe('photographs by the link', () => {
  test('are kept without where they were taken, and go with the customer who is erased', async () => {
    expect(await photograph('label')).toBe('kept')
    const [row] = await rows(`select * from picture where company_id = $1 and guide_id = '${guideId}'`)
    const kept = Buffer.from((await fileStore().get({ companyId: firm.companyId, id: row.id })) ?? [])
    expect(kept.byteLength).toBe(row.bytes)
    expect(kept.includes('Exif')).toBe(false)
    expect(kept.includes(HIDDEN)).toBe(false)
    await eraseCustomer(firm, { commandId: newId(), customerId: firm.customerId, version: 1 })
    const states = await rows(`select state from picture where company_id = $1 and guide_id is not null`)
    expect(states).toEqual([{ state: 'erased' }, { state: 'erased' }])
  })
  test('that are none, or by a link that ended, leave nothing behind', async () => {
    expect(await takePhotograph(of(), { kind: 'label', bytes: new TextEncoder().encode('<svg/>'), answers: {} })).toBe('no-picture')
    await withdrawGuide(firm, await named())
    const files = fs.readdirSync(folder, { recursive: true }).length
    expect(await photograph('label')).toBe('gone')
    expect(fs.readdirSync(folder, { recursive: true })).toHaveLength(files)
    expect(await rows(`select id from picture where company_id = $1 and guide_id = '${guideId}'`)).toEqual([])
  })
})

test('a link that was withdrawn, or a house that was sold, shows no step and takes nothing', async () => {
  await send()
  await db.query(`update tenure set to_day = '2026-12-02' where company_id = $1`, [firm.companyId])
  await db.query(`insert into tenure (company_id, id, site_id, customer_id, from_day) values ($1, $2, $3, $4, '2026-12-03')`, [
    ...[firm.companyId, newId(), firm.siteId, firm.otherCustomerId],
  ])
  expect(await link()).toMatchObject({ open: false, step: null })
  expect([await act({ kind: 'visit' }), await act({ kind: 'next', step: 'stop-and-refer', answers: {} })]).toEqual(['gone', 'gone'])
  await expect(sendSteps(firm, { ...(await named()), bedId: firm.bedId })).rejects.toThrow(/link ended/)
  expect((await guide()).state).toBe('working')
})
