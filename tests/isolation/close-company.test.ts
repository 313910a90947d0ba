import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { TABLES } from '@almanac/database/tables'
import { fileStore } from '@almanac/files/file-store'
import { addMembership } from '@almanac/identity/people'
import { stillIn } from '@almanac/identity/who'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { HANDLERS } from '../../apps/worker/handlers.ts'
import { NOW } from '../support/records.ts'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../support/two-firms.ts'
import { allProcedures, type Caller, makeCaller, send } from './signed-in-call.ts'

vi.mock('server-only', () => ({}))

let db: pg.Client
let folder: string
let mine: FirmRecords
let theirs: FirmRecords
let owner: Caller
let dispatcher: Caller
/** Works for both companies. */
let both: Caller

const ask = (of: Caller, name: string, input: object) => {
  const found = allProcedures().find((one) => one.name === name)
  if (!found) throw new Error(`${name} is gone`)
  return send(found.procedure, of.headers, input)
}
const sites = (of: Caller) => ask(of, 'sites.list', { limit: 5 })
const later = (days: number) => setClock(() => new Date(new Date(NOW).getTime() + days * 86_400_000))

/** Every row of every table that names the company or one of its people: 'table: row'. */
async function placesOf(ids: string[]): Promise<string[]> {
  const { rows: tables } = await db.query<{ name: string }>(
    `select format('%I.%I', schemaname, tablename) as name from pg_tables where schemaname not in ('pg_catalog', 'information_schema')`,
  )
  const places: string[] = []
  for (const { name } of tables) {
    const { rows } = await db.query<{ row: string }>(`select t::text as row from ${name} t where t::text ~ $1`, [ids.join('|')])
    places.push(...rows.map(({ row }) => `${name}: ${row}`))
  }
  return places
}

const filesOf = (companyId: string) =>
  fs.readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile() && one.parentPath.includes(companyId))
    .length

beforeAll(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-closing-'))
  process.env.DATA_DIR = folder
  later(0)
  db = await inspector()
  mine = await makeFirmRecords(db)
  theirs = await makeFirmRecords(db)
  owner = await makeCaller(mine.companyId)
  dispatcher = await makeCaller(mine.companyId, 'dispatcher')
  both = await makeCaller(mine.companyId, 'technician')
  await addMembership(both.personId, theirs.companyId, 'technician')
  for (const { companyId, pictureId } of [mine, theirs]) {
    await fileStore().put({ companyId, id: pictureId }, Buffer.from('as found'))
    fs.mkdirSync(path.join(folder, 'exports', companyId), { recursive: true })
    fs.writeFileSync(path.join(folder, 'exports', companyId, `${newId()}.zip`), 'everything')
  }
})
afterAll(async () => {
  setClock()
  fs.rmSync(folder, { recursive: true })
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('a company is closed by its owner: others are out at once and in again when it is taken back; on its day nothing of it is left, and nothing of another was touched', async () => {
  const stays = () => stillIn(dispatcher.sessionId, dispatcher.personId, mine.companyId, 'dispatcher')
  const close = () => ask(owner, 'closing.close', { commandId: newId(), companyId: mine.companyId })
  expect(await ask(dispatcher, 'closing.close', { commandId: newId(), companyId: mine.companyId })).toMatchObject({ code: 'forbidden' })
  expect(await stays()).toBe(true)
  // The fixture's clock stands at its NOW; a month after is the day.
  const day = new Date(new Date(NOW).getTime() + 30 * 86_400_000).toISOString()
  expect(await close()).toMatchObject({ ok: true, said: expect.stringContaining(day) })
  expect(await close()).toMatchObject({ code: 'conflict' })
  expect([await sites(dispatcher), await stays()]).toMatchObject([{ code: 'forbidden' }, false])
  expect(await sites(owner)).toMatchObject({ ok: true })
  // Whoever works elsewhere too goes on there.
  expect(await sites(both)).toMatchObject({ ok: true })
  const exporting = `select count(*)::int as count from company_export where company_id = $1 and state = 'waiting'`
  expect((await db.query(exporting, [mine.companyId])).rows).toEqual([{ count: 1 }])

  expect(await ask(owner, 'closing.keep', { commandId: newId(), companyId: mine.companyId })).toMatchObject({ ok: true })
  expect([await sites(dispatcher), await stays()]).toMatchObject([{ ok: true }, true])
  await HANDLERS.nightly({})
  expect((await db.query('select from company where id = $1', [mine.companyId])).rowCount).toBe(1)

  await close()
  // A month on the other company's own archive is too old: that is another matter.
  await db.query(`update company_export set state = 'removed' where company_id = $1`, [theirs.companyId])
  const before = await fingerprint(db, TABLES.tenant, [theirs.companyId])
  later(29)
  await HANDLERS.nightly({})
  expect((await placesOf([mine.companyId])).length).toBeGreaterThan(TABLES.tenant.length)
  expect(filesOf(mine.companyId)).toBe(2)
  later(31)
  await HANDLERS.nightly({})
  expect(await placesOf([mine.companyId, owner.personId, dispatcher.personId])).toEqual([])
  expect(filesOf(mine.companyId)).toBe(0)

  const after = await fingerprint(db, TABLES.tenant, [theirs.companyId])
  for (const table of TABLES.tenant)
    expect([table, after[`${table} ${theirs.companyId}`]]).toEqual([table, before[`${table} ${theirs.companyId}`]])
  expect(filesOf(theirs.companyId)).toBe(2)
  expect(await sites(both)).toMatchObject({ ok: true })
  expect((await db.query('select from membership where person_id = $1', [both.personId])).rowCount).toBe(1)
})

test('the database erases no company before its day, whoever asks', async () => {
  await expect(
    db.query(
      `begin; set local role almanac_app; select set_config('app.company_id', $$${theirs.companyId}$$, true), almanac_erase_company(now())`,
    ),
  ).rejects.toThrow(/no company in scope is to be erased/)
  await db.query('rollback')
})
