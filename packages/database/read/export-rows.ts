import type { Tx } from '../client.ts'
import { EXPORTED_OF_COMPANY, type ExportedTable, exportedColumns } from '../export-columns.ts'
import { Prisma } from '../generated/client.ts'

const PAGE = 1000

const named = (columns: readonly string[]) => Prisma.raw(columns.map((column) => `"${column}"`).join(', '))

/** A table's exported rows, in the order of their ids, a page at a time, each row as one line of JSON with the columns by name. */
export async function* exportedRows(tx: Tx, companyId: string, table: ExportedTable): AsyncGenerator<string[]> {
  const columns = named(exportedColumns(table))
  const from = Prisma.raw(`"${table}"`)
  for (let after = '00000000-0000-0000-0000-000000000000'; ; ) {
    const rows = await tx.$queryRaw<{ id: string; line: string }[]>`
      select x.id, to_jsonb(x)::text as line from
        (select ${columns} from ${from} where company_id = ${companyId}::uuid and id > ${after}::uuid order by id limit ${PAGE}) x order by x.id`
    if (rows.length > 0) yield rows.map((row) => row.line)
    const last = rows.at(-1)
    if (rows.length < PAGE || !last) return
    after = last.id
  }
}

/** The company itself, as it goes out. */
export async function exportedCompany(tx: Tx, companyId: string): Promise<Record<string, unknown>> {
  const [found] = await tx.$queryRaw<{ row: Record<string, unknown> }[]>`
    select to_jsonb(x) as row from (select ${named(EXPORTED_OF_COMPANY.split(' '))} from company where id = ${companyId}::uuid) x`
  return found?.row ?? {}
}

/** Lists that were imported: their files' names and headers, oldest first. */
export const exportedLists = (tx: Tx, companyId: string) =>
  tx.importBatch.findMany({ where: { companyId }, select: { id: true, fileName: true, header: true }, orderBy: { id: 'asc' } })

/** The pictures whose files go, in the order of their ids, a page at a time. */
export async function* exportedPictures(tx: Tx, companyId: string): AsyncGenerator<{ id: string; kind: string }> {
  for (let after = '00000000-0000-0000-0000-000000000000'; ; ) {
    const rows = await tx.picture.findMany({
      where: { companyId, state: 'stored', id: { gt: after } },
      select: { id: true, kind: true },
      orderBy: { id: 'asc' },
      take: PAGE,
    })
    yield* rows
    const last = rows.at(-1)
    if (rows.length < PAGE || !last) return
    after = last.id
  }
}

/** The messages whose files go, in the order of their ids, a page at a time. */
export async function* exportedReports(tx: Tx, companyId: string): AsyncGenerator<{ id: string }> {
  for (let after = '00000000-0000-0000-0000-000000000000'; ; ) {
    const rows = await tx.message.findMany({
      where: { companyId, fileState: 'stored', id: { gt: after } },
      select: { id: true },
      orderBy: { id: 'asc' },
      take: PAGE,
    })
    yield* rows
    const last = rows.at(-1)
    if (rows.length < PAGE || !last) return
    after = last.id
  }
}

/** The lines of one list as they were read, in the order of its file, a page at a time. */
export async function* exportedLines(tx: Tx, companyId: string, batchId: string): AsyncGenerator<string[][]> {
  for (let after = -1; ; ) {
    const rows = await tx.importRow.findMany({
      where: { companyId, batchId, line: { gt: after } },
      select: { line: true, cells: true },
      orderBy: { line: 'asc' },
      take: PAGE,
    })
    if (rows.length > 0) yield rows.map((row) => row.cells)
    const last = rows.at(-1)
    if (rows.length < PAGE || !last) return
    after = last.line
  }
}
