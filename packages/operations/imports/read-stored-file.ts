import { createWriteStream } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { PassThrough } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGunzip } from 'node:zlib'
import type { Tx } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { insertImportRows } from '@almanac/database/sql/insert-import-rows'
import { AppError } from '@almanac/runtime/errors'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { AsideOverrun, runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import { choicesByHeading } from '@almanac/service-rules/import/earlier-choices'
import type { Result } from '@almanac/units/result'
import { companyFacts } from '../shared/company-facts.ts'
import { LISTS_REMEMBERED, type StoredMapping } from './batch-mapping.ts'
import type { FilePiece, ReadFileAnswer, ReadFileInput } from './read-file-aside.ts'
import { refuseFile, TAKES_TOO_MUCH } from './upload-limits.ts'

type Task = TaskPayloads['read-file']

/** The largest list allowed reads in a few seconds; on a busy machine it may take several times as long. */
const ASIDE = { module: '@almanac/operations/imports/read-file-aside', seconds: 60, memoryMb: 1024 }
const PATIENCE = { timeoutMs: 120_000 }

/** The pieces of a file as they are kept, one at a time. */
async function* keptPieces({ companyId, batchId }: Task): AsyncGenerator<Uint8Array> {
  for (let place = 0; ; place++) {
    const where = { companyId_batchId_place: { companyId, batchId, place } }
    const piece = await inCompany({ companyId }, (tx) => tx.importFilePiece.findUnique({ where, select: { bytes: true } }))
    if (!piece) return
    yield piece.bytes
  }
}

/** Puts the pieces of a file together on this machine's disk, as it came. Files that an earlier release kept were not packed. */
async function writeFileOf(task: Task, target: string): Promise<void> {
  const first = (await keptPieces(task).next()).value
  const isPacked = first?.[0] === 0x1f && first[1] === 0x8b
  const open = isPacked ? createGunzip() : new PassThrough()
  await pipeline(keptPieces(task), open, createWriteStream(target, { flags: 'wx', mode: 0o600 }))
}

/** The file's rows and what its columns seem to hold, read in a process of its own: a file may have been made to do harm. */
async function readAside(companyId: string, input: ReadFileInput): Promise<ReadFileAnswer & { pieces: FilePiece[] }> {
  const pieces: FilePiece[] = []
  const onPiece = (piece: unknown) => pieces.push(piece as FilePiece)
  const answer = await runInWorkerThread<Result<ReadFileAnswer>>({ ...ASIDE, companyId }, input, onPiece).catch((error: unknown) => {
    throw error instanceof AsideOverrun ? refuseFile(TAKES_TOO_MUCH) : error
  })
  if (!answer.ok) throw new AppError('invalid', answer.reason)
  return { ...answer.value, pieces }
}

/** What the company chose for the columns of the lists it imported last. */
async function earlierChoices({ companyId }: Task) {
  const batches = await inCompany({ companyId }, (tx) =>
    tx.importBatch.findMany({
      where: { companyId, state: { in: ['queued', 'applying', 'applied'] } },
      select: { mapping: true },
      orderBy: { id: 'desc' },
      take: LISTS_REMEMBERED,
    }),
  )
  return choicesByHeading(batches.map(({ mapping }) => (mapping as unknown as StoredMapping).columns))
}

/** Ends the reading, whichever way it went; open pages hear of it. Nothing where another try has ended it. */
async function endReading({ companyId, batchId }: Task, work: (tx: Tx) => Promise<{ said: string; data: object }>): Promise<void> {
  await inCompany(
    { companyId },
    async (tx) => {
      const batch = await tx.importBatch.findFirst({ where: { companyId, id: batchId }, select: { createdBy: true } })
      // The row is held from here on, so that two tries never write one file's rows.
      const { count } = await tx.importBatch.updateMany({ where: { companyId, id: batchId, state: 'reading' }, data: { doneRows: 0 } })
      if (!batch || count === 0) return
      const { said, data } = await work(tx)
      const { version } = await tx.importBatch.update({
        where: { companyId_id: { companyId, id: batchId } },
        data: { ...data, version: { increment: 1 } },
      })
      const command = commandTools(tx, { companyId, personId: batch.createdBy }, 'imports.read', null)
      await command.audit(said, 'import-batch', batchId)
      await command.announce('import-batch', batchId, version)
    },
    PATIENCE,
  )
}

/** A file that can't be read goes; one that could be, and not as a person wanted, stays to be read otherwise. */
const refuse = (task: Task, failure: string) =>
  endReading(task, async (tx) => {
    const batch = await tx.importBatch.findFirst({ where: { companyId: task.companyId, id: task.batchId }, select: { mapping: true } })
    if (!(batch?.mapping as StoredMapping | undefined)?.readAs) await tx.importFilePiece.deleteMany({ where: task })
    return { said: 'file refused', data: { state: 'refused', failure } }
  })

/**
 * Reads the file of an import and keeps its rows as they came in a draft, in one transaction: nothing of customers or sites is touched yet. Columns are suggested
 * from the header and the contents, or as the company chose them before. A file that can't be read is refused with its sentence. The file stays
 * until its draft is imported or discarded, or another file comes: it may be read again another way. A try that is broken off begins again.
 */
export async function readStoredFile(task: Task): Promise<void> {
  const { companyId, batchId } = task
  const unread = await inCompany(task, (tx) =>
    tx.importBatch.findFirst({ where: { companyId, id: batchId, state: 'reading' }, select: { mapping: true } }),
  )
  if (!unread) return
  const { readAs } = unread.mapping as unknown as StoredMapping
  const { today } = await inCompany(task, (tx) => companyFacts(tx, companyId))
  const folder = await mkdtemp(path.join(os.tmpdir(), 'almanac-file-'))
  try {
    const file = path.join(folder, 'upload')
    await writeFileOf(task, file)
    const { pieces, ...found } = await readAside(companyId, { file, today, earlier: await earlierChoices(task), readAs })
    const mapping: StoredMapping = {
      columns: found.columns,
      sentences: [...found.sentences, found.reason],
      checked: false,
      ...{ delimiter: found.delimiter, encoding: found.encoding, sheet: found.sheet, sheets: found.sheets, readAs },
    }
    const data = {
      state: 'draft',
      headerLine: found.headerRow === null ? 0 : found.headerRow + 1,
      header: found.header,
      mapping: mapping as object,
      totalRows: pieces.reduce((sum, piece) => sum + piece.rows, 0),
    }
    await endReading(task, async (tx) => {
      for (const { json } of pieces) await insertImportRows(tx, companyId, batchId, Buffer.from(json).toString())
      return { said: 'file kept as a draft', data }
    })
  } catch (error) {
    if (!(error instanceof AppError) || error.code !== 'invalid') throw error
    await refuse(task, error.message)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** Refuses a file that ended every try to read it by an error of its own, with a sentence for whoever looks at it. */
export const giveUpReading = (task: Task): Promise<void> =>
  refuse(
    task,
    'Something went wrong on our side while we read this file, several times in a row. Nothing was imported. Send it again, or save it as CSV first.',
  )
