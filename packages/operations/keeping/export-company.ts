import fs from 'node:fs/promises'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { archiveFile, makeArchiveFolder } from './export-place.ts'
import { writeArchive } from './write-archive.ts'

/** A million rows take minutes; the longest that a task may take is a quarter of an hour. */
const PATIENCE = { timeoutMs: 840_000, snapshot: true }
const EVERY_MS = 1000
const UNDER_WAY = { state: { in: ['waiting', 'writing'] } }

type Said = { state?: string; tablesDone?: number; rowsWritten?: number; bytes?: number; failure?: string; finishedAt?: Date }

/** Says how far it is, in a small transaction of its own. Answers false where the export is no longer under way. */
async function say({ companyId, exportId }: TaskPayloads['export-company'], data: Said): Promise<boolean> {
  return inCompany({ companyId }, async (tx) => {
    const { count } = await tx.companyExport.updateMany({
      where: { companyId, id: exportId, ...UNDER_WAY },
      data: { ...data, version: { increment: 1 } },
    })
    const tools = commandTools(tx, { companyId, personId: null }, 'exports.write', null)
    if (count > 0) await tools.announce('export', exportId)
    if (count > 0 && data.state === 'ready') await tools.audit('ready', 'export', exportId, { rows: data.rowsWritten ?? 0 })
    return count > 0
  })
}

/**
 * Writes everything of a company into one archive on the disk, as it was at one moment. A run that is broken off begins again; the file takes its name only when it
 * is whole. `readPeople` tells who the company's people are: they are identity's, which no operation knows.
 */
export async function exportCompany(
  task: TaskPayloads['export-company'],
  readPeople: (companyId: string) => Promise<unknown[]>,
): Promise<void> {
  const { companyId, exportId } = task
  if (!(await say(task, { state: 'writing', tablesDone: 0, rowsWritten: 0 }))) return
  await makeArchiveFolder(companyId)
  const file = archiveFile(companyId, exportId)
  const part = `${file}.part`
  const people = await readPeople(companyId)
  let last = performance.now()
  const written = await inCompany(
    { companyId },
    (tx) =>
      writeArchive(tx, { companyId, people, file: part, at: now() }, async (tablesDone, rowsWritten) => {
        if (performance.now() - last < EVERY_MS) return
        last = performance.now()
        await say(task, { tablesDone, rowsWritten })
      }),
    PATIENCE,
  )
  await fs.rename(part, file)
  const { rows: rowsWritten, bytes } = written
  const kept = await say(task, { state: 'ready', rowsWritten, bytes, finishedAt: now() })
  if (!kept) await fs.rm(file, { force: true }) // somebody was erased meanwhile
}

/** Ends an export that could not be written, with a sentence for whoever waits for it. */
export async function giveUpExport(task: TaskPayloads['export-company'], error: unknown): Promise<void> {
  const sentence =
    'The export couldn’t be written, several times in a row. Your records are untouched. Check the server’s disk, then start it again.'
  await say(task, { state: 'failed', failure: error instanceof AppError ? error.message : sentence })
  await fs.rm(`${archiveFile(task.companyId, task.exportId)}.part`, { force: true })
}
