import type { Moving } from '@almanac/contract/merging'
import { movedKinds } from '@almanac/records/merging'
import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'
import { HANGS_ON, type MovedFrom } from '../sql/move-records.ts'

const MOST_NAMES = 5

/** How a row is called, where it has a name of its own. */
const NAMES: Record<string, Prisma.Sql> = {
  tenure: Prisma.sql`(select s.label from site s where s.company_id = x.company_id and s.id = x.site_id)`,
  contact: Prisma.sql`x.name`,
  softener: Prisma.sql`x.label`,
  site: Prisma.sql`x.label`,
}

type Row = { moved: boolean; count: number; names: string[] | null }
export type MergedRows = Record<'back' | 'stays' | 'elsewhere', Moving[]>

/** The rows of one table that hang on the kept one: those that moved to it then, and those that were made since. A row's id tells when it was made. */
const hanging = (tx: Tx, companyId: string, table: string, on: Prisma.Sql, ids: readonly string[], mergingId: string) =>
  tx.$queryRaw<Row[]>`
    select x.id = any(${ids}::uuid[]) as moved, count(*)::int as count,
      (array_agg(${NAMES[table] ?? Prisma.sql`null::text`} order by x.id))[1:${Prisma.raw(String(MOST_NAMES))}] as names
    from ${Prisma.raw(`"${table}"`)} x
    where x.company_id = ${companyId}::uuid and ${on} and (x.id = any(${ids}::uuid[]) or x.id > ${mergingId}::uuid) group by 1`

/** What a merging moved and what came since, as it lies now: what would go back, what would stay, and what is neither's any more. */
export async function readMergedRows(
  tx: Tx,
  companyId: string,
  merging: { id: string; kind: string; keptId: string | null; town: string | null; moved: readonly MovedFrom[] },
): Promise<MergedRows> {
  const { id, kind, keptId, town, moved } = merging
  const hangs = kind === 'customer' ? [HANGS_ON.customer] : kind === 'supply' ? [HANGS_ON.supply, HANGS_ON.supplyHistory] : [HANGS_ON.site]
  const tables: [table: string, on: Prisma.Sql, ids: string[]][] =
    town !== null
      ? [['site', Prisma.sql`x.town = ${town}`, moved.flatMap((one) => one.ids)]]
      : hangs.flatMap(({ column, tables }) =>
          tables.map((table): [string, Prisma.Sql, string[]] => [
            table,
            Prisma.sql`x.${Prisma.raw(`"${column}"`)} = ${keptId}::uuid`,
            moved.find((one) => one.from === table)?.ids ?? [],
          ]),
        )
  const found: MergedRows = { back: [], stays: [], elsewhere: [] }
  for (const [table, on, ids] of tables) {
    const as = movedKinds.find((one) => one === table)
    if (!as) continue // a forecast: it follows its bed
    const rows = await hanging(tx, companyId, table, on, ids, id)
    const said = (count: number, names: readonly (string | null)[] = []) => ({
      ...{ kind: as, count, names: names.flatMap((name) => name || []) },
    })
    const [back, stays] = [true, false].map((was) => rows.find((row) => row.moved === was))
    if (back) found.back.push(said(back.count, back.names ?? []))
    if (stays) found.stays.push(said(stays.count, stays.names ?? []))
    const lost = ids.length - (back?.count ?? 0)
    if (lost > 0) found.elsewhere.push(said(lost))
  }
  return found
}
