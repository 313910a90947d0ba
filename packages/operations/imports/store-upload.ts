import { createReadStream } from 'node:fs'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { beginReading } from './begin-reading.ts'
import { refuseForeign } from './refuse-foreign.ts'

const PIECE_BYTES = 1024 * 1024
/** Twenty megabytes are written within a second; a slow disk may need more. */
const PATIENCE = { timeoutMs: 120_000 }

/**
 * Keeps a file as it came and hands it to the worker, in one transaction: nothing of it is read yet, so that nobody waits and nobody is held up; but what its first bytes
 * say is no list is refused at once. One of a company at a time. `file` is a path on this machine's disk, which the caller removes; memory holds one piece of it.
 */
export async function storeUpload(
  scope: Scope & { personId: string },
  { fileName, file }: { fileName: string; file: string },
): Promise<{ batchId: string }> {
  const { companyId } = scope
  return inCompany(
    scope,
    async (tx) => {
      if ((await tx.importBatch.count({ where: { companyId, state: 'reading' } })) > 0)
        throw new AppError('rate-limited', 'Your company’s last file is still being read. Nothing was imported. Try again in a minute.')
      // Files of drafts before this one: each may be read again until another comes.
      await tx.importFilePiece.deleteMany({ where: { companyId } })
      const command = commandTools(tx, scope, 'imports.upload', null)
      const name = fileName.replaceAll('\u0000', '').slice(0, 200) || 'unnamed'
      const batchId = await beginReading(tx, command, { fileName: name, createdBy: scope.personId })
      let place = 0
      for await (const bytes of createReadStream(file, { highWaterMark: PIECE_BYTES }) as AsyncIterable<Uint8Array<ArrayBuffer>>) {
        if (place === 0) refuseForeign(bytes)
        await tx.importFilePiece.create({ data: { companyId, id: newId(), batchId, place: place++, bytes } })
      }
      if (place === 0) refuseForeign(new Uint8Array())
      return { batchId }
    },
    PATIENCE,
  )
}
