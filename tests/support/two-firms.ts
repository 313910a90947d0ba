import { newId } from '@almanac/runtime/ids'
import pg from 'pg'
import { copyWritten, readWritten, type Written } from './copy-records.ts'
import { type Records, writeRecords } from './records.ts'
import { testDatabase } from './test-database.ts'

export type FirmRecords = Records & { companyId: string; personId: string }

/** A connection as superuser, to prepare and to inspect; row security does not apply to it. */
export async function inspector(): Promise<pg.Client> {
  const db = new pg.Client({ connectionString: (await testDatabase()).superUrl })
  await db.connect()
  return db
}

/** A company without any record. Companies are made outside the app, as at sign-up. */
export async function makeCompany(db: pg.Client, name = 'Quarry Road Soft Water'): Promise<string> {
  const id = newId()
  await db.query(`insert into company (id, name, time_zone, unit_system, currency) values ($1, $2, 'America/Phoenix', 'us', 'USD')`, [
    id,
    name,
  ])
  return id
}

let written: Written | undefined

/** A company with at least one row in each tenant table, the first one's written at the app's login; the ids of its records by name. */
export async function makeFirmRecords(db: pg.Client, personId: string = newId()): Promise<FirmRecords> {
  const owner = { companyId: await makeCompany(db), personId }
  if (written) return { ...owner, ...(await copyWritten(db, written, owner)) }
  const ids = await writeRecords(owner)
  written = await readWritten(db, owner, ids)
  return { ...owner, ...ids }
}

/**
 * What stands in some companies' tables, one line each: how many rows and a hash of them all; also their tasks, and all sessions and memberships.
 * To compare before and after.
 */
export async function fingerprint(db: pg.Client, tables: readonly string[], companies: string[]): Promise<Record<string, string>> {
  const parts = tables.map(
    (table) =>
      `select '${table} ' || company_id as key, count(*) || ' ' || md5(string_agg(t::text, '|' order by t::text)) as value
       from ${table} t where company_id = any($1::uuid[]) group by company_id`,
  )
  const beside = [
    `select 'queue ' || (data->>'companyId'), count(*) || ' ' || md5(string_agg(id::text, '|' order by id))
     from queue.job where data->>'companyId' = any($1::uuid[]::text[]) group by data->>'companyId'`,
    `select 'queue without a company', count(*)::text from queue.job where not data ? 'companyId'`,
    `select 'session', md5(string_agg(t::text, '|' order by t::text)) from session t`,
    `select 'membership', md5(string_agg(t::text, '|' order by t::text)) from membership t`,
  ]
  const { rows } = await db.query<{ key: string; value: string }>([...parts, ...beside].join('\nunion all\n'), [companies])
  return Object.fromEntries(rows.map((row) => [row.key, row.value]))
}
