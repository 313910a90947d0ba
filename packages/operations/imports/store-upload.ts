import { readFile } from 'node:fs/promises'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { insertImported } from '@almanac/database/sql/import-inserts'
import { newId } from '@almanac/runtime/ids'
import { isEmptyRow } from '@almanac/service-rules/import/read-row'
import { suggestColumns } from '@almanac/service-rules/import/suggest-columns'
import { companyFacts } from '../shared/company-facts.ts'
import type { StoredMapping } from './batch-mapping.ts'
import { readUpload } from './read-upload.ts'
import { MOST_ROWS, refuseFile } from './upload-limits.ts'

const CHUNK = 1000
/** PostgreSQL's text holds no zero byte. */
const storable = (text: string) => text.replaceAll('\u0000', '')

/**
 * Reads a file and keeps its rows as they came in a draft, in one transaction: nothing of customers or sites is touched yet. Columns are suggested from
 * the header and the contents. `file` is a path on this machine's disk, which the caller removes.
 */
export async function storeUpload(
  scope: Scope & { personId: string },
  upload: { fileName: string; file: string },
): Promise<{ batchId: string }> {
  const { companyId } = scope
  const { rows: read, sentences } = await readUpload(await readFile(upload.file))
  const rows = read.map((cells) => cells.map(storable))
  return inCompany(
    scope,
    async (tx) => {
      const { today } = await companyFacts(tx, companyId)
      const found = suggestColumns(rows, today)
      const records = rows
        .map((cells, index) => ({ cells, line: index + 1 }))
        .filter(({ cells, line }) => line > found.firstRecordRow && !isEmptyRow(cells))
      if (records.length === 0) throw refuseFile('The file has a header but no rows below it.')
      if (records.length > MOST_ROWS)
        throw refuseFile(
          `The file holds ${records.length.toLocaleString('en-US')} rows; at most 50,000 are read at one time. Split the list.`,
        )
      const batchId = newId()
      const tools = commandTools(tx, scope, 'imports.upload', null)
      const mapping: StoredMapping = { columns: found.columns, sentences: [...sentences, found.reason], checked: false }
      await tx.importBatch.create({
        data: {
          companyId,
          id: batchId,
          fileName: storable(upload.fileName).slice(0, 200) || 'unnamed',
          state: 'draft',
          headerLine: found.headerRow === null ? 0 : found.headerRow + 1,
          header: found.header,
          mapping: mapping as object,
          totalRows: records.length,
          createdAt: tools.at,
          createdBy: scope.personId,
        },
      })
      for (let start = 0; start < records.length; start += CHUNK) {
        const data = records
          .slice(start, start + CHUNK)
          .map(({ cells, line }) => ({ companyId, id: newId(), batchId, line, cells, status: 'pending', problems: [], notes: [] }))
        await insertImported(tx, 'import_row', data)
      }
      await tools.audit('file kept as a draft', 'import-batch', batchId, { rows: records.length })
      await tools.announce('import-batch', batchId, 1)
      return { batchId }
    },
    { timeoutMs: 120_000 },
  )
}
