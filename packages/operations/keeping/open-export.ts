import { createReadStream, type ReadStream } from 'node:fs'
import fs from 'node:fs/promises'
import { dayOf } from '@almanac/database/days'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { archiveFile } from './export-place.ts'

/** Opens a finished archive for its owner, and notes in the trail that it was taken. Throws `not-found` for one that is not there. */
export async function openExport(scope: Scope, exportId: string): Promise<{ fileName: string; bytes: number; content: ReadStream }> {
  const { companyId } = scope
  const found = await inCompany(scope, (tx) => tx.companyExport.findUnique({ where: { companyId_id: { companyId, id: exportId } } }))
  if (found?.state !== 'ready') throw notFound('export')
  const file = archiveFile(companyId, exportId)
  const size = await fs.stat(file).then(
    (stat) => stat.size,
    () => null,
  )
  if (size === null)
    throw new AppError('conflict', 'The file of this export is no longer on the server. Nothing was lost; start a new export.')
  await inCompany(scope, (tx) => commandTools(tx, scope, 'exports.download', null).audit('downloaded', 'export', exportId))
  return { fileName: `everything-${dayOf(found.createdAt)}.zip`, bytes: size, content: createReadStream(file) }
}
