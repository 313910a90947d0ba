import { inCompany, type Scope } from '@almanac/database/in-company'
import { problemRows } from '@almanac/service-rules/import/problem-file'
import iconv from 'iconv-lite'
import Papa from 'papaparse'
import type { CellProblem } from './plan-types.ts'
import { readBatch } from './read-batch.ts'
import type { FileEncoding } from './upload-limits.ts'

export type ProblemFile = { fileName: string; bytes: Uint8Array<ArrayBuffer>; encoding: FileEncoding }

/** The rows of a batch that a person must look at, as a CSV to fix and import again, parted and written in letters as the firm's file was: its own cells, then line, column, value and reason. */
export async function exportProblems(scope: Pick<Scope, 'companyId'>, batchId: string): Promise<ProblemFile> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const batch = await readBatch(tx, companyId, batchId)
    const rows = await tx.importRow.findMany({
      where: { companyId, batchId, NOT: { problems: { equals: [] } } },
      select: { line: true, cells: true, problems: true },
      orderBy: { line: 'asc' },
    })
    const listed = rows.map(({ line, cells, problems }) => ({ line, cells, problems: problems as unknown as CellProblem[] }))
    const sheet = problemRows(batch.header, listed as Parameters<typeof problemRows>[1])
    const encoding = batch.mapping.encoding ?? 'utf-8'
    const csv = Papa.unparse(sheet, { newline: '\r\n', delimiter: batch.mapping.delimiter ?? ',' })
    return {
      fileName: `${batch.fileName.replace(/\.[a-z]+$/i, '')} - rows to fix.csv`,
      // The mark tells spreadsheets which Unicode it is; Windows-1252 has none.
      bytes: new Uint8Array(iconv.encode(csv, encoding, { addBOM: encoding !== 'windows-1252' })),
      encoding,
    }
  })
}
