import { importColumns } from '@almanac/records/import-facts'
import type { Tx } from '../client.ts'
import { sqlName } from './sql-name.ts'

/** Columns an import fills; a row that lacks one leaves it null, and columns not named here get their defaults. Identifiers come from here only. */
const COLUMNS = {
  customer: ['companyId', 'id', 'batchId', 'matchKey', ...importColumns('customer')],
  contact: ['companyId', 'id', 'batchId', 'customerId', 'role', ...importColumns('contact')],
  consent: ['companyId', 'id', 'contactId', 'channel', 'granted', 'source', 'sinceDay'],
  site: ['companyId', 'id', 'batchId', 'matchKey', ...importColumns('site')],
  tenure: ['companyId', 'id', 'siteId', 'customerId'],
  softener: ['companyId', 'id', 'batchId', 'matchKey', 'siteId', 'arrangement', ...importColumns('softener')],
  tank: ['companyId', 'id', 'batchId', 'softenerId', 'position', 'factSources', ...importColumns('tank')],
  bed: ['companyId', 'id', 'batchId', 'tankId', 'entered', 'factSources', ...importColumns('bed')],
  water_test: ['companyId', 'id', 'batchId', 'siteId', 'softenerId', 'point', 'entered', 'source', ...importColumns('test')],
}

export type InsertedTable = keyof typeof COLUMNS
/** A row to insert: its columns by their names in code, days as 'YYYY-MM-DD'. */
export type NewRow = Record<string, unknown>

/** Inserts rows with one statement and one parameter, whatever their number: an import's rows would need tens of thousands of parameters otherwise. */
export async function insertImported(tx: Tx, table: InsertedTable, rows: readonly NewRow[]): Promise<void> {
  if (rows.length === 0) return
  const columns = COLUMNS[table].map((code) => ({ code, name: sqlName(code) }))
  const list = columns.map(({ name }) => `"${name}"`).join(', ')
  const plain = rows.map((row) => Object.fromEntries(columns.map(({ code, name }) => [name, row[code] ?? null])))
  await tx.$executeRawUnsafe(
    `insert into "${table}" (${list}) select ${list} from jsonb_populate_recordset(null::"${table}", $1::jsonb)`,
    JSON.stringify(plain),
  )
}
