import { closeClients } from '@almanac/database/client'
import { TABLES, type TenantTable } from '@almanac/database/tables'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { APPEND_ONLY, REMOVABLE } from '../support/catalogue.ts'
import { testDatabase } from '../support/test-database.ts'
import { type FirmRecords, inspector, makeCompany, makeFirmRecords } from '../support/two-firms.ts'

/** What PostgreSQL says when row security, or a missing grant, refuses. */
const REFUSED = '42501'

let db: pg.Client
let app: pg.Client
let a: FirmRecords
let b: FirmRecords
/** A company that receives a copy of b's rows, one table after the other. */
let copy: string
let order: string[]

/** Runs one statement at the app's login, in a transaction that is taken back unless `keep`; answers the rows touched or the SQLSTATE. */
async function at(company: string | null, sql: string, values: unknown[] = [], keep = false): Promise<number | string> {
  await app.query('begin')
  try {
    if (company) await app.query(`select set_config('app.company_id', $1, true)`, [company])
    const { rowCount } = await app.query(sql, values)
    await app.query(keep ? 'commit' : 'rollback')
    return rowCount ?? 0
  } catch (error) {
    await app.query('rollback')
    return (error as pg.DatabaseError).code ?? String(error)
  }
}

const rowsOf = async (table: string, company: string) =>
  Number((await db.query<{ n: string }>(`select count(*) as n from ${table} where company_id = $1`, [company])).rows[0]?.n)

/** The tenant tables, each after those its rows here refer to. Beds refer to visits and visits to beds; the beds here were there first. */
async function parentsFirst(): Promise<string[]> {
  const { rows } = await db.query<{ child: string; parent: string }>(
    `select conrelid::regclass::text as child, confrelid::regclass::text as parent from pg_constraint
     where contype = 'f' and connamespace = 'public'::regnamespace and conrelid <> confrelid`,
  )
  const links = rows.filter((link) => !(link.child === 'bed' && link.parent === 'visit') && link.parent !== 'company')
  const done: string[] = []
  while (done.length < TABLES.tenant.length) {
    const next = TABLES.tenant.find((table) => !done.includes(table) && links.every((l) => l.child !== table || done.includes(l.parent)))
    if (!next) throw new Error(`the tables refer to each other in a circle, after ${done.join(', ')}`)
    done.push(next)
  }
  return done
}

beforeAll(async () => {
  db = await inspector()
  app = new pg.Client({ connectionString: (await testDatabase()).appUrl })
  await app.connect()
  a = await makeFirmRecords(db)
  b = await makeFirmRecords(db)
  copy = await makeCompany(db)
  order = await parentsFirst()
})
afterAll(async () => {
  await closeClients()
  await app.end()
  await db.end()
})

describe.each(TABLES.tenant)('%s', (table: TenantTable) => {
  test('has rows of both firms here, or nothing below would be shown', async () => {
    expect(await rowsOf(table, a.companyId)).toBeGreaterThan(0)
    expect(await rowsOf(table, b.companyId)).toBeGreaterThan(0)
  })

  test('SELECT: own rows, none of another company, none without a company', async () => {
    const select = `select from ${table} where company_id = $1`
    expect(await at(a.companyId, select, [a.companyId])).toBe(await rowsOf(table, a.companyId))
    expect(await at(a.companyId, select, [b.companyId])).toBe(0)
    expect(await at(a.companyId, `select from ${table}`)).toBe(await rowsOf(table, a.companyId))
    expect(await at(null, `select from ${table}`)).toBe(0)
  })

  test('UPDATE: own rows where the table may change; others are passed over without a word', async () => {
    const update = `update ${table} set company_id = company_id where company_id = $1`
    const mayChange = !APPEND_ONLY.includes(table)
    const handOver = `update ${table} set company_id = $2 where company_id = $1`
    expect(await at(a.companyId, update, [a.companyId])).toBe(mayChange ? await rowsOf(table, a.companyId) : REFUSED)
    expect(await at(a.companyId, update, [b.companyId])).toBe(mayChange ? 0 : REFUSED)
    expect(await at(null, update, [a.companyId])).toBe(mayChange ? 0 : REFUSED)
    // No column is read here, so that the policy for UPDATE stands alone: without it every row would become A's.
    const take = `update ${table} set company_id = '${a.companyId}'`
    expect(await at(a.companyId, take)).toBe(mayChange ? await rowsOf(table, a.companyId) : REFUSED)
    expect(await at(a.companyId, handOver, [a.companyId, copy])).toBe(REFUSED)
  })

  test('DELETE: own rows of projections only; others are passed over without a word', async () => {
    const remove = `delete from ${table} where company_id = $1`
    const mayGo = REMOVABLE.includes(table)
    expect(await at(a.companyId, remove, [a.companyId])).toBe(mayGo ? await rowsOf(table, a.companyId) : REFUSED)
    expect(await at(a.companyId, remove, [b.companyId])).toBe(mayGo ? 0 : REFUSED)
    expect(await at(null, remove, [a.companyId])).toBe(mayGo ? 0 : REFUSED)
    expect(await at(a.companyId, `delete from ${table}`)).toBe(mayGo ? await rowsOf(table, a.companyId) : REFUSED)
    expect(await rowsOf(table, b.companyId)).toBeGreaterThan(0)
  })
})

test('INSERT: the same rows are refused for another company and without one, and taken for the own; every table in turn', async () => {
  for (const table of order) {
    const { rows } = await db.query<{ row: object }>(`select to_jsonb(t) as row from ${table} t where company_id = $1`, [b.companyId])
    const written = JSON.stringify(rows.map(({ row }) => ({ ...row, company_id: copy })))
    const insert = `insert into ${table} select * from jsonb_populate_recordset(null::${table}, $1::jsonb)`
    expect([table, await at(a.companyId, insert, [written])]).toEqual([table, REFUSED])
    expect([table, await at(null, insert, [written])]).toEqual([table, REFUSED])
    expect([table, await at(copy, insert, [written], true)]).toEqual([table, rows.length])
  }
})

test('a row cannot refer to another company’s record, though the id exists', async () => {
  const insert = `insert into softener (company_id, id, site_id, label) values ($1, gen_random_uuid(), $2, 'x')`
  expect(await at(a.companyId, insert, [a.companyId, b.siteId])).toBe('23503')
  expect(await at(a.companyId, insert, [a.companyId, a.siteId])).toBe(1)
})

test('of the companies themselves the app sees the one in scope, and changes nothing but what its owner may set', async () => {
  expect(await at(a.companyId, 'select from company')).toBe(1)
  expect(await at(null, 'select from company')).toBe(0)
  for (const column of ['time_zone', 'unit_system', 'currency'])
    expect([column, await at(a.companyId, `update company set ${column} = ${column}`)]).toEqual([column, REFUSED])
  for (const set of ["locale = 'en-GB'", "name = 'Another'"]) {
    const rewrite = `update company set ${set} where id = $1`
    expect(await at(a.companyId, rewrite, [a.companyId])).toBe(1)
    expect(await at(a.companyId, rewrite, [b.companyId])).toBe(0)
    expect(await at(null, rewrite, [a.companyId])).toBe(0)
  }
  expect(await at(a.companyId, `update company set locale = 'English'`)).toBe('23514')
})

test.each(TABLES.identity)('%s is closed to the app’s login altogether', async (table) => {
  expect(await at(a.companyId, `select from ${table}`)).toBe(REFUSED)
})

test('the sign-in login reads no record of any company', async () => {
  const identity = new pg.Client({ connectionString: (await testDatabase()).identityUrl })
  await identity.connect()
  try {
    await expect(identity.query('select from site')).rejects.toMatchObject({ code: REFUSED })
    await expect(identity.query('select from membership')).resolves.toBeTruthy()
  } finally {
    await identity.end()
  }
})
