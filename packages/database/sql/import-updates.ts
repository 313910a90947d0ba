import type { Tx } from '../client.ts'

/** Columns an import may change: name in code, name and type in the table. Identifiers come from here only, never from input. */
const COLUMNS = {
  customer: { name: 'name text', reference: 'reference text' },
  contact: { name: 'name text', phone: 'phone text', email: 'email text' },
  site: {
    ...{ label: 'label text', street: 'street text', town: 'town text', region: 'region text', postcode: 'postcode text' },
    ...{ accessNotes: 'access_notes text', waterSupplyId: 'water_supply_id uuid' },
  },
  softener: {
    ...{ label: 'label text', location: 'location text', notes: 'notes text', installedEarliest: 'installed_earliest date' },
    ...{ installedLatest: 'installed_latest date', installedAsWritten: 'installed_as_written text' },
  },
  tank: {
    ...{ diameterIn: 'diameter_in float8', heightIn: 'height_in float8', nominalGrains: 'nominal_grains int' },
    sizeAsWritten: 'size_as_written text',
  },
  bed: {
    ...{
      resinKind: 'resin_kind text',
      volumeFt3: 'volume_ft3 float8',
      beganEarliest: 'began_earliest date',
      beganLatest: 'began_latest date',
    },
    ...{ beganAsWritten: 'began_as_written text', lastSeenDay: 'last_seen_day date', endedEarliest: 'ended_earliest date' },
    ...{ endedLatest: 'ended_latest date', endCause: 'end_cause text' },
  },
  water_test: {
    ...{ hardnessGpg: 'hardness_gpg float8', ironMgL: 'iron_mg_l float8', freeChlorineMgL: 'free_chlorine_mg_l float8' },
    ...{ totalChlorineMgL: 'total_chlorine_mg_l float8', day: 'day date' },
  },
} as const

export type ImportedTable = keyof typeof COLUMNS
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
  const columns = Object.entries(COLUMNS[table]).map(([code, sql]) => {
    const [name = '', type = ''] = sql.split(' ')
    return { code, name, type }
  })
  const sets = [
    'version = t.version + 1',
    ...columns.map(({ code, name }) => `${name} = n."${code}"`),
    ...(SOURCED.has(table) ? ['fact_sources = t.fact_sources || n.sources'] : []),
    ...(ENTERED.has(table) ? ['entered = t.entered || n.entered'] : []),
  ]
  const shape = columns.map(({ code, type }) => `"${code}" ${type}`).join(', ')
  const sql = `update ${table} t set ${sets.join(', ')}
    from jsonb_to_recordset($2::jsonb) as n(id uuid, version int, sources jsonb, entered jsonb, ${shape})
    where t.company_id = $1::uuid and t.id = n.id and t.version = n.version`
  let changed = 0
  for (let start = 0; start < patches.length; start += CHUNK) {
    const plain = patches.slice(start, start + CHUNK).map(({ columns: values, ...patch }) => ({ ...values, ...patch }))
    changed += await tx.$executeRawUnsafe(sql, companyId, JSON.stringify(plain))
  }
  return changed
}
