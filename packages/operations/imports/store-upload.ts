import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { beginReading } from './begin-reading.ts'
import { refuseForeign } from './refuse-foreign.ts'

const PIECE_BYTES = 1024 * 1024
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

/** What comes in small chunks, in pieces of about one megabyte. */
async function* inPieces(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  let held: Uint8Array[] = []
  let size = 0
  for await (const chunk of chunks) {
    held.push(chunk)
    size += chunk.length
    if (size < PIECE_BYTES) continue
    yield new Uint8Array(Buffer.concat(held))
    held = []
    size = 0
  }
  if (size > 0) yield new Uint8Array(Buffer.concat(held))
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
      // Packed on the way: each byte passes the driver several times, and of a list nine in ten are repetition.
      await pipeline(createReadStream(file), createGzip({ level: 1 }), async (packed: AsyncIterable<Uint8Array>) => {
        let place = 0
        for await (const bytes of inPieces(packed))
          await tx.importFilePiece.create({ data: { companyId, id: newId(), batchId, place: place++, bytes } })
      })
      return { batchId }
    },
    PATIENCE,
  )
}
