import { TABLES } from '@almanac/database/tables'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import type { Records } from './records.ts'

type Owner = { companyId: string; personId: string }

/** A company's rows as text, each table's as a JSON array; and whose they are. */
export type Written = { rows: Record<string, string>; of: Owner; ids: Records }

const UUID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g

/** What stands in a company's tables. */
export async function readWritten(db: pg.Client, of: Owner, ids: Records): Promise<Written> {
  const parts = TABLES.tenant.map(
    (table) => `select '${table}' as "table", json_agg(t)::text as rows from ${table} t where company_id = $1 having count(*) > 0`,
  )
  const found = await db.query<{ table: string; rows: string }>(parts.join(' union all '), [of.companyId])
  return { rows: Object.fromEntries(found.rows.map(({ table, rows }) => [table, rows])), of, ids }
}

/** Writes the same rows for another company, every id a new one, in one statement: a hundred writes one after the other took most of a test's time. */
export async function copyWritten(db: pg.Client, { rows, of, ids }: Written, to: Owner): Promise<Records> {
  const named = Object.entries(ids).map(([name, id]) => ({ name, id, copy: newId() }))
  const copies = new Map([[of.companyId, to.companyId], [of.personId, to.personId], ...named.map(({ id, copy }) => [id, copy] as const)])
  const copyOf = (id: string) => {
    const copy = copies.get(id) ?? newId()
    copies.set(id, copy)
    return copy
  }
  const texts = Object.entries(rows).map(([table, text]) => ({ table, text: text.replaceAll(UUID, copyOf) }))
  const inserts = texts.map(
    ({ table }, at) => `in_${table} as (insert into ${table} select * from json_populate_recordset(null::${table}, $${at + 1}))`,
  )
  await db.query('begin')
  try {
    // The rows were taken by every rule when they were written; here they come in no order.
    await db.query('set local session_replication_role = replica')
    await db.query(
      `with ${inserts.join(', ')} select`,
      texts.map(({ text }) => text),
    )
    await db.query('commit')
  } catch (error) {
    await db.query('rollback')
    throw error
  }
  return Object.fromEntries(named.map(({ name, copy }) => [name, copy])) as Records
}
