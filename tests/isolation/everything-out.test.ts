import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { EXPORTED, type ExportedTable, exportedColumns } from '@almanac/database/export-columns'
import { inCompany } from '@almanac/database/in-company'
import { readExports } from '@almanac/database/read/company-exports'
import { fileStore } from '@almanac/files/file-store'
import { exportedPeople } from '@almanac/identity/exported-people'
import { addMembership, addPerson } from '@almanac/identity/people'
import { refreshCompany } from '@almanac/operations/forecasts/refresh-forecasts'
import { bringIn } from '@almanac/operations/imports/test-import'
import { exportCompany } from '@almanac/operations/keeping/export-company'
import { removeOldExports } from '@almanac/operations/keeping/remove-exports'
import { startExport } from '@almanac/operations/keeping/start-export'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { NOW } from '../support/records.ts'
import { type Archive, manifestOf, readArchive, rowsOf, takeIn } from '../support/take-in-archive.ts'
import { type FirmRecords, inspector, makeCompany, makeFirmRecords } from '../support/two-firms.ts'

const PASSWORD = 'a password that no list of leaked ones holds'
const TABLES = Object.keys(EXPORTED) as ExportedTable[]

let db: pg.Client
let mine: FirmRecords
let other: FirmRecords
let archive: Archive
let folder: string
let copy: string

const fileOf = (exportId: string) => path.join(folder, 'exports', mine.companyId, `${exportId}.zip`)

/** What stands in one table of a company, without whose it is, in the order of the ids. */
async function contents(table: ExportedTable, companyId: string) {
  const columns = exportedColumns(table)
    .map((column) => `"${column}"`)
    .join(', ')
  const { rows } = await db.query(
    `select to_jsonb(x) as row from (select ${columns} from "${table}" where company_id = $1 order by id) x`,
    [companyId],
  )
  return rows.map(({ row }) => row)
}

async function exported(firm: { companyId: string; personId: string }) {
  const { exportId } = await startExport(firm, { commandId: newId() })
  await exportCompany({ companyId: firm.companyId, exportId }, exportedPeople)
  return exportId
}

beforeAll(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-everything-'))
  process.env.DATA_DIR = folder
  setClock(() => new Date(NOW))
  db = await inspector()
  const personId = await addPerson({ name: 'Ruth Ames', email: `${newId()}@firm.example`, password: PASSWORD })
  mine = await makeFirmRecords(db, personId)
  other = await makeFirmRecords(db)
  await addMembership(personId, mine.companyId, 'owner')
  const list = ['Name,Street,Town,Tank,Resin put in,Hardness (gpg),Notes']
  for (let n = 1; n <= 30; n++)
    list.push(`Jørgen Ashby ${n},Weir Road ${n},Weirham,10x54,${2005 + (n % 18)},19,"=SUM(1) ${n}, said ""fine"""`)
  await bringIn(mine, list.join('\n'), 'our list.csv')
  // More than one page of rows.
  await db.query(
    `insert into movement (company_id, id, stock_item_id, quantity, reason, at)
     select $1, gen_random_uuid(), $2, 1, 'received', now() from generate_series(1, 2500)`,
    [mine.companyId, mine.stockItemId],
  )
  await refreshCompany({ companyId: mine.companyId, cause: 'nightly' })
  for (const firm of [mine, other])
    for (const id of [firm.pictureId, firm.guidePictureId])
      await fileStore().put({ companyId: firm.companyId, id }, Buffer.from(`photograph of ${firm.siteId}`))
  archive = await readArchive(fileOf(await exported(mine)))
  copy = await makeCompany(db)
  await takeIn(archive, copy)
})
afterAll(async () => {
  setClock()
  fs.rmSync(folder, { recursive: true })
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('an empty company that takes the archive in holds the same rows in every table', async () => {
  for (const table of TABLES) {
    const taken = await contents(table, copy)
    expect([table, taken.length]).not.toEqual([table, 0])
    // What the export itself wrote into the trail came after its picture was taken.
    const there = (await contents(table, mine.companyId)).filter(
      (row) => !(table === 'audit_entry' && row.operation === 'exports.write: ready'),
    )
    expect([table, taken.length]).toEqual([table, there.length])
    expect([table, taken]).toEqual([table, there])
  }
  expect((await contents('movement', copy)).length).toBeGreaterThan(2500)
})

test('forecasts made afresh from what was taken in are those of the company it came from', async () => {
  const forecasts = async (companyId: string) =>
    (
      await db.query(
        `select bed_id, due10_day::text, due50_day::text, due90_day::text, chance_3_months, chance_12_months, chance_24_months, chance_already_failed,
           encode(month_chances, 'hex') as months, refusal from bed_forecast where company_id = $1 order by bed_id`,
        [companyId],
      )
    ).rows
  await db.query('delete from bed_forecast where company_id = $1', [copy])
  for (const companyId of [copy, mine.companyId]) await refreshCompany({ companyId, cause: 'nightly' })
  const taken = await forecasts(copy)
  expect(taken.length).toBeGreaterThan(30)
  expect(taken.some((one) => one.chance_12_months > 0)).toBe(true)
  expect(taken).toEqual(await forecasts(mine.companyId))
})

test('the archive counts its rows rightly, in JSON and as a spreadsheet, and holds the list as it was read', () => {
  const { tables, people, company } = manifestOf(archive)
  for (const { name, rows } of tables) expect([name, rowsOf(archive, name).length]).toEqual([name, rows])
  expect(company).toMatchObject({ name: 'Quarry Road Soft Water' })
  expect(people).toMatchObject([{ name: 'Ruth Ames', role: 'owner' }])
  const csv = archive.get('csv/contact.csv') ?? ''
  expect(csv.startsWith('\ufeffid,version,customer_id')).toBe(true)
  expect(csv).toContain('hanna@orchard.example')
  const list = [...archive.entries()].find(([name]) => name.startsWith('lists/') && name.endsWith('our list.csv'))?.[1] ?? ''
  expect(list.split('\r\n')).toHaveLength(32)
  // A spreadsheet must not take a note for a formula.
  expect(list).toContain(`"'=SUM(1) 1, said ""fine"""`)
  expect(archive.get('read-me.txt')).toContain('applied_command')
})

test('photographs are in it, each under the id of its record; one that the store has lost is named', async () => {
  expect(archive.get(`photographs/${mine.pictureId}.jpg`)).toBe(`photograph of ${mine.siteId}`)
  expect(archive.get(`photographs/${mine.guidePictureId}.jpg`)).toBe(`photograph of ${mine.siteId}`)
  expect(manifestOf(archive).pictures).toEqual({ written: 2, missing: [] })
  await fileStore().remove({ companyId: mine.companyId, id: mine.pictureId })
  const without = await readArchive(fileOf(await exported(mine)))
  expect(manifestOf(without).pictures).toEqual({ written: 1, missing: [mine.pictureId] })
})

test('no secret is in it, and nothing of another company', async () => {
  const all = [...archive.values()].join('\n')
  const { rows } = await db.query<{ password: string }>(
    `select password from account where user_id = $1
     union all select token from session where user_id = $1`,
    [mine.personId],
  )
  expect(rows.length).toBeGreaterThan(0)
  for (const { password } of rows) expect(all).not.toContain(password)
  expect(all).toContain(mine.siteId)
  for (const id of [other.companyId, other.siteId, other.customerId, other.auditId]) expect(all).not.toContain(id)
})

test('one at a time; done again it is not done twice; a broken-off one begins again', async () => {
  const { exportId } = await startExport(mine, { commandId: newId() })
  await expect(startExport(mine, { commandId: newId() })).rejects.toMatchObject({ code: 'conflict' })
  await inCompany(mine, (tx) =>
    tx.companyExport.updateMany({ where: { companyId: mine.companyId, id: exportId }, data: { state: 'writing' } }),
  )
  fs.writeFileSync(`${fileOf(exportId)}.part`, 'half of it')
  const task = { companyId: mine.companyId, exportId }
  await exportCompany(task, exportedPeople)
  expect((await readArchive(fileOf(exportId))).has('company.json')).toBe(true)
  const when = fs.statSync(fileOf(exportId)).mtimeMs
  await exportCompany(task, exportedPeople)
  expect(fs.statSync(fileOf(exportId)).mtimeMs).toBe(when)
  const [row] = (await readExports(mine)).rows
  expect(row).toMatchObject({ id: exportId, state: 'ready', bytes: fs.statSync(fileOf(exportId)).size })
  expect(row?.rowsWritten).toBeGreaterThan(2500)
  expect((await readExports(other)).rows.map((one) => one.id)).toEqual([other.exportId])
})

test('an archive leaves the disk after seven days, and no other before', async () => {
  const exportId = await exported(mine)
  await removeOldExports(mine.companyId)
  expect(fs.existsSync(fileOf(exportId))).toBe(true)
  setClock(() => new Date(Date.parse(NOW) + 7.1 * 86_400_000))
  await removeOldExports(mine.companyId)
  setClock(() => new Date(NOW))
  expect(fs.existsSync(fileOf(exportId))).toBe(false)
  expect((await readExports(mine)).rows.find((one) => one.id === exportId)?.state).toBe('removed')
})
