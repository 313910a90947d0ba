import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'

/** What hangs on a customer, on a site and on a water supply, by table; where a site's own customer is said, a site that goes keeps it. Identifiers come from here only. */
export const HANGS_ON = {
  customer: { column: 'customer_id', tables: ['tenure', 'contact', 'phone_call', 'agreement', 'import_row'] },
  site: {
    column: 'site_id',
    tables: ['softener', 'water_test', 'job', 'contact', 'phone_call', 'call_back', 'agreement', 'reminder', 'bed_forecast', 'import_row'],
  },
  supply: { column: 'water_supply_id', tables: ['site', 'bed_forecast'] },
  /** Moves with a supply only where the kept one has no history of its own. */
  supplyHistory: { column: 'water_supply_id', tables: ['supply_period'] },
} as const

export type MovedFrom = { from: string; ids: string[] }

/** Moves everything that hangs on one customer, site or supply to another; of `among` only those rows. Answers which moved, by table. */
export async function moveRecords(
  tx: Tx,
  companyId: string,
  kind: keyof typeof HANGS_ON,
  { from, to }: { from: string; to: string },
  among?: readonly MovedFrom[],
): Promise<MovedFrom[]> {
  const { column, tables } = HANGS_ON[kind]
  const moved: MovedFrom[] = []
  for (const table of tables) {
    const ids = among?.find((one) => one.from === table)?.ids ?? null
    if (among && ids === null) continue
    const [name, on] = [Prisma.raw(`"${table}"`), Prisma.raw(`"${column}"`)]
    const rows = await tx.$queryRaw<{ id: string }[]>`
      update ${name} set ${on} = ${to}::uuid where company_id = ${companyId}::uuid and ${on} = ${from}::uuid
        and (${ids}::uuid[] is null or id = any(${ids}::uuid[])) returning id`
    if (rows.length > 0) moved.push({ from: table, ids: rows.map((row) => row.id) })
  }
  return moved
}
