// The migrator stands on Prisma's engine in a form that its makers do not run in production: these tests break when a new version differs.
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { testDatabase } from '../support/test-database.ts'

type Migrate = (url: string, dir: string) => Promise<string[]>
const engine = path.resolve(import.meta.dirname, '../../packages/database/engine/migrate.mjs')
const { migrate } = (await import(engine)) as { migrate: Migrate }

let url: string
let folder: string
let owner: pg.Client
let count = 0

async function inDatabase(connectionString: string, sql: string) {
  const client = new pg.Client({ connectionString })
  await client.connect()
  await client.query(sql)
  await client.end()
}

/** An empty database that almanac_owner owns, and an empty folder of migrations. */
beforeEach(async () => {
  const { migrationUrl } = await testDatabase()
  const name = `${new URL(migrationUrl).pathname.slice(1)}_m${++count}`
  await inDatabase(migrationUrl, `CREATE DATABASE ${name}`)
  url = Object.assign(new URL(migrationUrl), { pathname: `/${name}` }).href
  owner = new pg.Client({ connectionString: url })
  await owner.connect()
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'migrations-'))
  fs.writeFileSync(path.join(folder, 'migration_lock.toml'), 'provider = "postgresql"\n')
})

afterEach(async () => {
  await owner.end()
  const { migrationUrl } = await testDatabase()
  await inDatabase(migrationUrl, `DROP DATABASE ${new URL(url).pathname.slice(1)} WITH (FORCE)`)
  fs.rmSync(folder, { recursive: true })
})

function put(name: string, sql: string) {
  fs.mkdirSync(path.join(folder, name), { recursive: true })
  fs.writeFileSync(path.join(folder, name, 'migration.sql'), sql)
}

async function tables() {
  const { rows } = await owner.query(`SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename NOT LIKE '\\_%' ORDER BY 1`)
  return rows.map((row) => row.tablename)
}

test('applies each file once, in order, whole: also a block with semicolons, and a comment at the end', async () => {
  put('1_first', `CREATE TABLE first (id int); DO $$ BEGIN INSERT INTO first VALUES (1); INSERT INTO first VALUES (2); END $$; -- the end`)
  put('2_second', 'CREATE TABLE second AS SELECT * FROM first')
  expect(await migrate(url, folder)).toEqual(['1_first', '2_second'])
  expect(await migrate(url, folder)).toEqual([])
  expect((await owner.query('SELECT id FROM second ORDER BY id')).rows).toEqual([{ id: 1 }, { id: 2 }])
})

test('two migrators at once: one does the work, the other waits and finds nothing to do', async () => {
  put('1_slow', 'CREATE TABLE slow (id int); SELECT pg_sleep(0.5)')
  const both = await Promise.all([migrate(url, folder), migrate(url, folder)])
  expect(both.flat()).toEqual(['1_slow'])
})

test('a file that fails leaves nothing of itself, and is applied once it is mended', async () => {
  put('1_good', 'CREATE TABLE good (id int)')
  put('2_bad', 'CREATE TABLE bad (id int); SELECT 1/0')
  await expect(migrate(url, folder)).rejects.toThrow(/division by zero/)
  expect(await tables()).toEqual(['good'])
  put('2_bad', 'CREATE TABLE bad (id int)')
  expect(await migrate(url, folder)).toEqual(['2_bad'])
  expect(await tables()).toEqual(['bad', 'good'])
})

test('a migrator killed in the middle of a file leaves nothing of it, and the next one applies it', async () => {
  put('1_long', 'CREATE TABLE long (id int); SELECT pg_sleep(60)')
  const script = `const { migrate } = await import(${JSON.stringify(engine)}); await migrate(${JSON.stringify(url)}, ${JSON.stringify(folder)})`
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], { stdio: 'ignore' })
  const asleep = async () =>
    (await owner.query(`SELECT FROM pg_stat_activity WHERE query LIKE '%pg_sleep(60)%' AND pid <> pg_backend_pid()`)).rowCount
  while (!(await asleep())) await new Promise((done) => setTimeout(done, 50))
  child.kill('SIGKILL')
  await once(child, 'exit')
  put('1_long', 'CREATE TABLE long (id int)')
  expect(await migrate(url, folder)).toEqual(['1_long'])
  expect(await tables()).toEqual(['long'])
})
