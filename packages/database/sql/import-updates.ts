import { importColumns } from '@almanac/records/import-facts'
import type { Tx } from '../client.ts'
import { sqlName } from './sql-name.ts'

/** Which kind's facts stand in each table; its columns come from there only, never from input. */
const KINDS = {
  customer: 'customer',
  contact: 'contact',
  site: 'site',
  softener: 'softener',
  tank: 'tank',
  bed: 'bed',
  water_test: 'test',
} as const

export type ImportedTable = keyof typeof KINDS
export type ImportedPatch = {
  id: string
  version: number
  columns: Record<string, string | number | boolean | null>
  sources: Record<string, string | null>
  entered: Record<string, unknown>
}

const CHUNK = 2000
const SOURCED: ReadonlySet<ImportedTable> = new Set(['tank', 'bed'])
const ENTERED: ReadonlySet<ImportedTable> = new Set(['bed', 'water_test'])

/**
 * Sets all importable columns of some rows, one statement for a chunk, and counts their versions up. A row whose version is not the one given is left alone;
 * answers how many were changed. Where facts came from, and values as typed, are merged in.
 */
export async function updateImported(tx: Tx, companyId: string, table: ImportedTable, patches: readonly ImportedPatch[]): Promise<number> {
  const columns = importColumns(KINDS[table]).map((code) => ({ code, name: sqlName(code) }))
  const sets = [
    'version = t.version + 1',
    ...columns.map(({ name }) => `"${name}" = n."${name}"`),
    ...(SOURCED.has(table) ? ['fact_sources = t.fact_sources || n.fact_sources'] : []),
    ...(ENTERED.has(table) ? ['entered = t.entered || n.entered'] : []),
  ]
  // The table itself says the types.
  const sql = `update "${table}" t set ${sets.join(', ')}
    from jsonb_populate_recordset(null::"${table}", $2::jsonb) n
    where t.company_id = $1::uuid and t.id = n.id and t.version = n.version`
  let changed = 0
  for (let start = 0; start < patches.length; start += CHUNK) {
    const plain = patches.slice(start, start + CHUNK).map(({ id, version, columns: values, sources, entered }) => ({
      ...{ id, version, fact_sources: sources, entered },
      ...Object.fromEntries(columns.map(({ code, name }) => [name, values[code] ?? null])),
    }))
    changed += await tx.$executeRawUnsafe(sql, companyId, JSON.stringify(plain))
  }
  return changed
}
