import type { ImportBatchPage, ImportBatchRow, ImportColumn, ImportCounts, ImportSupply, ImportUndone } from '@almanac/contract/imports'
import { notFound } from '@almanac/runtime/errors'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

type StoredCounts = { check?: ImportCounts; done?: ImportCounts; undone?: ImportUndone; gone?: ImportBatchRow['gone'] }

function batchRow(row: Prisma.ImportBatchGetPayload<object>): ImportBatchRow {
  const counts = row.counts as StoredCounts
  return {
    id: row.id,
    version: row.version,
    fileName: row.fileName,
    state: row.state as ImportBatchRow['state'],
    totalRows: row.totalRows,
    doneRows: row.doneRows,
    counts: counts.done ?? counts.check ?? null,
    gone: counts.gone ?? null,
    createdAt: row.createdAt.toISOString(),
    appliedAt: row.appliedAt?.toISOString() ?? null,
  }
}

/** The firm's imports, newest first; without what was discarded. */
export async function readImports(
  scope: Pick<Scope, 'companyId'>,
  query: { limit: number; cursor?: string },
): Promise<{ rows: ImportBatchRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, (tx) =>
    tx.importBatch.findMany({
      // Ids are made in order of time, so they page like the day they were brought in.
      where: { companyId, state: { not: 'discarded' }, ...(after ? { id: { lt: after.id } } : {}) },
      orderBy: { id: 'desc' },
      take: query.limit + 1,
    }),
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map(batchRow),
    nextCursor: found.length > query.limit && last ? cursorOf(last.createdAt.toISOString(), last.id) : null,
  }
}

/** One import with its columns, and what its check, its writing or its undoing came to. */
export async function readImport(scope: Pick<Scope, 'companyId'>, batchId: string): Promise<ImportBatchPage> {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) =>
    tx.importBatch.findFirst({ where: { companyId, id: batchId }, include: { _count: { select: { pieces: true } } } }),
  )
  if (!found) throw notFound('import')
  const mapping = found.mapping as unknown as {
    columns: ImportColumn[]
    sentences: string[]
    checked: boolean
    listRightOn?: string | null
    supplies?: ImportSupply[]
    sheet?: string
    sheets?: string[]
  }
  return {
    ...batchRow(found),
    headerLine: found.headerLine,
    sentences: mapping.sentences,
    columns: mapping.columns,
    ...{ sheets: mapping.sheets ?? [], sheet: mapping.sheet ?? null, isKept: found._count.pieces > 0 },
    checked: mapping.checked,
    listRightOn: mapping.listRightOn ?? null,
    supplies: mapping.supplies ?? [],
    failure: found.failure,
    undone: (found.counts as StoredCounts).undone ?? null,
  }
}

/** Rows of an import in the order of the file: all, those that a person must look at, those something was assumed in, or those that change what is on record. */
export async function readImportRows(
  scope: Pick<Scope, 'companyId'>,
  query: { batchId: string; only: 'all' | 'problem' | 'noted' | 'changed'; limit: number; cursor?: string },
) {
  const { companyId } = scope
  const { batchId, only, limit } = query
  const after = query.cursor ? readCursor(query.cursor, 'number') : null
  return inCompany(scope, async (tx) => {
    const batch = await tx.importBatch.findFirst({ where: { companyId, id: batchId } })
    if (!batch) throw notFound('import')
    const kind = {
      ...{ all: {}, changed: { status: 'updated' } },
      ...{ problem: { NOT: { problems: { equals: [] } } }, noted: { NOT: { notes: { equals: [] } } } },
    }[only]
    const found = await tx.importRow.findMany({
      where: { companyId, batchId, ...kind, ...(after ? { line: { gt: after.sort } } : {}) },
      select: { id: true, line: true, cells: true, status: true, problems: true, notes: true, siteId: true, before: true },
      orderBy: { line: 'asc' },
      take: limit + 1,
    })
    const rows = found.slice(0, limit)
    const last = rows.at(-1)
    return {
      header: batch.header,
      mapping: batch.mapping,
      rows,
      nextCursor: found.length > limit && last ? cursorOf(last.line, last.id) : null,
    }
  })
}
