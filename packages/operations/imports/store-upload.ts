import { inCompany, type Scope } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { insertImportRows } from '@almanac/database/sql/insert-import-rows'
import { inLane } from '@almanac/runtime/aside-turns'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { AsideOverrun, runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import type { Result } from '@almanac/units/result'
import { companyFacts } from '../shared/company-facts.ts'
import type { StoredMapping } from './batch-mapping.ts'
import type { FilePiece, ReadFileAnswer, ReadFileInput } from './read-file-aside.ts'
import { refuseFile, TAKES_TOO_MUCH } from './upload-limits.ts'

/** The largest list allowed reads in a few seconds; on a busy machine it may take several times as long. */
const ASIDE = { module: '@almanac/operations/imports/read-file-aside', seconds: 60, memoryMb: 1024 }
/** Files of all firms that are read or wait to be, two at a time: whoever comes later is told at once, rather than left waiting. */
const MOST_IN_LINE = 4

const storable = (text: string) => text.replaceAll('\u0000', '')

/** The file's rows and what its columns seem to hold, read in a process of its own: a file may have been made to do harm. */
async function readAside(companyId: string, input: ReadFileInput): Promise<ReadFileAnswer & { pieces: FilePiece[] }> {
  if (inLane(ASIDE.module) >= MOST_IN_LINE)
    throw new AppError('rate-limited', 'Many files are being read right now. Nothing was imported. Try again in a minute.')
  const pieces: FilePiece[] = []
  const onPiece = (piece: unknown) => pieces.push(piece as FilePiece)
  const answer = await runInWorkerThread<Result<ReadFileAnswer>>({ ...ASIDE, companyId }, input, onPiece).catch((error: unknown) => {
    throw error instanceof AsideOverrun ? refuseFile(TAKES_TOO_MUCH) : error
  })
  if (!answer.ok) throw new AppError('invalid', answer.reason)
  return { ...answer.value, pieces }
}

/**
 * Reads a file and keeps its rows as they came in a draft, in one transaction: nothing of customers or sites is touched yet. Columns are suggested from
 * the header and the contents. `file` is a path on this machine's disk, which the caller removes.
 */
export async function storeUpload(
  scope: Scope & { personId: string },
  { fileName, file }: { fileName: string; file: string },
): Promise<{ batchId: string }> {
  const { companyId } = scope
  const { today } = await inCompany(scope, (tx) => companyFacts(tx, companyId))
  const { pieces, ...found } = await readAside(companyId, { file, today })
  const totalRows = pieces.reduce((sum, piece) => sum + piece.rows, 0)
  return inCompany(
    scope,
    async (tx) => {
      const batchId = newId()
      const tools = commandTools(tx, scope, 'imports.upload', null)
      const mapping: StoredMapping = {
        columns: found.columns,
        sentences: [...found.sentences, found.reason],
        checked: false,
        delimiter: found.delimiter,
      }
      await tx.importBatch.create({
        data: {
          companyId,
          id: batchId,
          fileName: storable(fileName).slice(0, 200) || 'unnamed',
          state: 'draft',
          headerLine: found.headerRow === null ? 0 : found.headerRow + 1,
          header: found.header,
          mapping: mapping as object,
          totalRows,
          createdAt: tools.at,
          createdBy: scope.personId,
        },
      })
      for (const { json } of pieces) await insertImportRows(tx, companyId, batchId, Buffer.from(json).toString())
      await tools.audit('file kept as a draft', 'import-batch', batchId, { rows: totalRows })
      await tools.announce('import-batch', batchId, 1)
      return { batchId }
    },
    { timeoutMs: 120_000 },
  )
}
