import fs from 'node:fs/promises'
import path from 'node:path'
import { config } from '@almanac/runtime/config'

/** The comment is the bundler's: without it the build would look for the folder and take the whole repository along. */
const folder = (companyId: string) => path.resolve(/* turbopackIgnore: true */ config().DATA_DIR, 'half-sent', companyId)
const fileOf = (companyId: string, pictureId: string) => path.join(folder(companyId), pictureId)

const absent = (error: unknown) => (error as NodeJS.ErrnoException).code === 'ENOENT'

/** How many bytes of a picture are here. Another server's disk knows nothing of them: then it is sent from its beginning. */
export async function bytesHere(companyId: string, pictureId: string): Promise<number> {
  try {
    return (await fs.stat(fileOf(companyId, pictureId))).size
  } catch (error) {
    if (absent(error)) return 0
    throw error
  }
}

/** Writes what comes behind what is here, piece by piece, and keeps what came when it is broken off. Answers how much is here then. */
export async function writeBehind(
  companyId: string,
  pictureId: string,
  offset: number,
  pieces: AsyncIterable<Uint8Array>,
): Promise<number> {
  await fs.mkdir(folder(companyId), { recursive: true, mode: 0o700 })
  const file = await fs.open(fileOf(companyId, pictureId), offset === 0 ? 'w' : 'r+', 0o600)
  let at = offset
  try {
    // At its place and not at the end: the same piece that comes twice at one time is written twice to the same place.
    for await (const piece of pieces) {
      await file.write(piece, 0, piece.byteLength, at)
      at += piece.byteLength
    }
  } finally {
    await file.close()
  }
  return at
}

export const readHalfSent = (companyId: string, pictureId: string): Promise<Uint8Array> => fs.readFile(fileOf(companyId, pictureId))

/** Forgets what came of a picture. */
export const dropHalfSent = (companyId: string, pictureId: string): Promise<void> => fs.rm(fileOf(companyId, pictureId), { force: true })

/** Forgets what nobody has sent on for so long; whoever does begins anew. */
export async function dropOldHalves(companyId: string, before: Date): Promise<void> {
  const names = await fs.readdir(folder(companyId)).catch((error: unknown) => {
    if (absent(error)) return []
    throw error
  })
  for (const name of names) {
    const found = await fs.stat(fileOf(companyId, name)).catch(() => null)
    if (found && found.mtime < before) await dropHalfSent(companyId, name)
  }
}
