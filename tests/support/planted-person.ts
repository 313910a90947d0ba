import fs from 'node:fs'
import { TABLES } from '@almanac/database/tables'
import type pg from 'pg'

export const NAME = 'Zebulon Quillfeather'
export const PHONE = '(630) 555-0199'
export const EMAIL = 'zeb@quill.example'
/** As somebody would write it into a note. */
export const PLANTED = `ask "Zebulon  Quillfeather" (ZEBULON QUILLFEATHER; Quillfeather, Zebulon), 630.555.0199, +1 630 555 0199 or ${EMAIL}.`
/** Rows bear these themselves: who else is called so keeps the name. */
export const NAMES = ['contact.name', 'contact.phone', 'contact.other_phone', 'contact.email', 'customer.name', 'colleague.name']

/** Writes the planted text into every column of a company that takes it; answers which did. */
export async function plant(db: pg.Client, companyId: string, also: readonly string[] = []): Promise<string[]> {
  const { rows } = await db.query<{ table: string; column: string; type: string }>(
    `select table_name as "table", column_name as "column", udt_name as type from information_schema.columns
     where table_schema = 'public' and table_name = any($1) and udt_name in ('text', '_text', 'jsonb') order by 1, 2`,
    [TABLES.tenant.filter((table) => table !== 'search_token')],
  )
  const took: string[] = []
  for (const { table, column, type } of rows) {
    const name = `${table}.${column}`
    if (NAMES.includes(name) && !also.includes(name)) continue
    const value = type === 'jsonb' ? JSON.stringify({ note: [PLANTED, { deep: PLANTED }] }) : type === '_text' ? [PLANTED, 'x'] : PLANTED
    await db.query('begin')
    try {
      // A message keeps its words once it is written: here it is as if it had been written so.
      if (table === 'message') await db.query('set local session_replication_role = replica')
      await db.query(`update "${table}" set "${column}" = $2 where company_id = $1`, [companyId, value])
      await db.query('commit')
      took.push(name)
    } catch {
      await db.query('rollback') // a check, a unique or a reference: no place where a person writes
    }
  }
  return took
}

/** Where anything names the person: 'table: row', over every table of every schema. */
export async function namedPlaces(db: pg.Client): Promise<string[]> {
  const { rows: tables } = await db.query<{ name: string }>(
    `select format('%I.%I', schemaname, tablename) as name from pg_tables where schemaname not in ('pg_catalog', 'information_schema')`,
  )
  const places: string[] = []
  for (const { name } of tables) {
    const { rows } = await db.query<{ row: string }>(
      `select t::text as row from ${name} t where t::text ~* 'quillfeather|zeb@quill' or regexp_replace(t::text, '[^0-9]', '', 'g') like '%6305550199%'`,
    )
    places.push(...rows.map(({ row }) => `${name}: ${row}`))
  }
  return places
}

/** The database server's own log, from here on. */
export async function serverLog(db: pg.Client): Promise<{ since: () => string }> {
  const { rows } = await db.query<{ data_directory: string }>('show data_directory')
  const file = `${rows[0]?.data_directory}.log`
  const { size } = fs.statSync(file)
  return { since: () => fs.readFileSync(file).subarray(size).toString('utf8') }
}
