import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { TABLES } from '@almanac/database/tables'
import pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../support/test-database.ts'
import { inspector, makeFirmRecords } from '../support/two-firms.ts'

const root = path.resolve(import.meta.dirname, '../..')
const migrations = path.join(root, 'prisma/migrations')
/** The project's own migrator, as a release runs it; plain JavaScript, so its type stands here. */
const engine: { migrate: (url: string, folder: string) => Promise<string[]> } = await import(
  path.join(root, 'packages/database/engine/migrate.mjs')
)
let db: pg.Client
let folder: string
let number = 0

beforeAll(async () => {
  db = await inspector()
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'migrations-'))
  fs.cpSync(migrations, folder, { recursive: true })
  await makeFirmRecords(db)
  await makeFirmRecords(db)
})
afterAll(async () => {
  fs.rmSync(folder, { recursive: true })
  await closeClients()
  await db.end()
})

/** Applies one more migration as the tables' owner, as at a release; one that fails is taken out again, so that the next can try. */
async function release(sql: string): Promise<string[]> {
  const name = `20990101000${String(++number).padStart(3, '0')}_data`
  fs.mkdirSync(path.join(folder, name))
  fs.writeFileSync(path.join(folder, name, 'migration.sql'), sql)
  try {
    return await engine.migrate((await testDatabase()).migrationUrl, folder)
  } catch (error) {
    fs.rmSync(path.join(folder, name), { recursive: true })
    throw error
  }
}

const accessNotes = async () => (await db.query('select access_notes from site order by id')).rows.map((row) => row.access_notes)
const each = (change: string, leftOver: string) => `SELECT almanac_for_each_company($$${change}$$, $$${leftOver}$$);`

test('the role that migrates is no superuser, and row security holds for it too', async () => {
  const owner = new pg.Client({ connectionString: (await testDatabase()).migrationUrl })
  await owner.connect()
  const { rows } = await owner.query('select rolsuper, rolbypassrls from pg_roles where rolname = current_user')
  expect(rows).toEqual([{ rolsuper: false, rolbypassrls: false }])
  expect((await owner.query('select from site')).rowCount).toBe(0)
  await owner.end()
  expect(await accessNotes()).toEqual([null, null])
})

test('a bare UPDATE in a migration is applied and changes nothing: this is why none may stand there', async () => {
  await release(`UPDATE site SET access_notes = 'bare';`)
  expect(await accessNotes()).toEqual([null, null])
})

test('inside each company it changes every row, in one transaction', async () => {
  await release(
    each(`UPDATE site SET access_notes = 'ask' WHERE access_notes IS NULL`, 'SELECT count(*) FROM site WHERE access_notes IS NULL'),
  )
  expect(await accessNotes()).toEqual(['ask', 'ask'])
  const owner = new pg.Client({ connectionString: (await testDatabase()).migrationUrl })
  await owner.connect()
  const { rows } = await owner.query(
    `select almanac_for_each_company('update site set access_notes = access_notes', 'select 0') as touched`,
  )
  expect(rows).toEqual([{ touched: '2' }])
  expect((await owner.query('select from site')).rowCount).toBe(0) // and it leaves no company in scope
  await owner.end()
})

test('one that leaves rows as they were raises, and keeps nothing', async () => {
  const missed = each(
    `UPDATE site SET access_notes = 'gate' WHERE label = 'nowhere'`,
    `SELECT count(*) FROM site WHERE access_notes <> 'gate'`,
  )
  await expect(release(`UPDATE company SET name = 'half';\n${missed}`)).rejects.toThrow(/1 rows of company [0-9a-f-]+ are still as before/)
  expect(await accessNotes()).toEqual(['ask', 'ask'])
  expect((await db.query(`select from company where name = 'half'`)).rowCount).toBe(0)
  await release(each(`UPDATE site SET access_notes = 'gate'`, `SELECT count(*) FROM site WHERE access_notes <> 'gate'`))
  expect(await accessNotes()).toEqual(['gate', 'gate'])
})

test('the app may not use it', async () => {
  const app = new pg.Client({ connectionString: (await testDatabase()).appUrl })
  await app.connect()
  await expect(app.query(`select almanac_for_each_company('select 1', 'select 0')`)).rejects.toMatchObject({ code: '42501' })
  await app.end()
})

/** Statements of a migration that change rows of tenant tables by themselves. */
function bareChanges(sql: string): string[] {
  const outside = sql.replace(/--.*$/gm, '').replace(/\$(\w*)\$[\s\S]*?\$\1\$/g, '')
  const bare = /(?:^|;|\()\s*(?:update|delete\s+from|insert\s+into|merge\s+into)\s+(?:only\s+)?(?:public\.)?"?(\w+)"?/gi
  return [...outside.matchAll(bare)].flatMap(([statement, table]) =>
    (TABLES.tenant as readonly string[]).includes(table ?? '') ? [statement.replace(/^[;(]?\s*/, '')] : [],
  )
}

test('no migration changes rows of companies in another way', () => {
  const names = fs.readdirSync(migrations).filter((name) => /^\d/.test(name))
  const found = names.flatMap((name) => bareChanges(fs.readFileSync(path.join(migrations, name, 'migration.sql'), 'utf8')))
  expect(found).toEqual([])
  expect(bareChanges(`-- first\nUPDATE "site" SET label = 'x';\nDELETE FROM job;`)).toEqual(['UPDATE "site"', 'DELETE FROM job'])
  expect(bareChanges(`WITH gone AS (DELETE FROM bed_forecast RETURNING id) SELECT 1;`)).toHaveLength(1)
  expect(bareChanges(each('UPDATE site SET label = label', 'SELECT 0'))).toEqual([])
})
