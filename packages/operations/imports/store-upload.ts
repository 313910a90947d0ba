import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { promisify } from 'node:util'
import { gzip } from 'node:zlib'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { beginReading } from './begin-reading.ts'
import { refuseForeign } from './refuse-foreign.ts'

const PIECE_BYTES = 1024 * 1024
const packed = promisify(gzip)
/** Twenty megabytes are written within a second; a slow disk may need more. */
const PATIENCE = { timeoutMs: 120_000 }

/** The first bytes of a file, by which other kinds are known. */
async function firstBytes(file: string): Promise<Uint8Array> {
  const handle = await open(file)
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(16), 0, 16, 0)
    return buffer.subarray(0, bytesRead)
  } finally {
    await handle.close()
  }
}

/**
 * Keeps a file as it came and hands it to the worker, in one transaction: nothing of it is read yet, so that nobody waits and nobody is held up; but what its first bytes
 * say is no list is refused at once. One of a company at a time. `file` is a path on this machine's disk, which the caller removes; memory holds one piece of it.
 */
export async function storeUpload(
  scope: Scope & { personId: string },
  { fileName, file }: { fileName: string; file: string },
): Promise<{ batchId: string }> {
  const { companyId } = scope
  refuseForeign(await firstBytes(file))
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
      // Packed, each piece as a gzip member of its own: what is written passes the driver several times, and most of a list repeats. In large pieces, since each
      // waits for its turn among all other requests.
      let place = 0
      for await (const piece of createReadStream(file, { highWaterMark: PIECE_BYTES })) {
        const bytes = new Uint8Array(await packed(piece, { level: 1 }))
        await tx.importFilePiece.create({ data: { companyId, id: newId(), batchId, place: place++, bytes } })
      }
      return { batchId }
    },
    PATIENCE,
  )
}
