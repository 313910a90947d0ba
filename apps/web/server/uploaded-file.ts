import 'server-only'
import { createWriteStream } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { AppError } from '@almanac/runtime/errors'
import { piecesWithin } from './body.ts'

/** Files that come in at one time, in this process: each takes its limit of disk while it is read. */
const MOST_AT_ONCE = 4

let present = 0

const later = (why: string) => new AppError('unavailable', `${why} Nothing was brought in; try again in a minute.`)

/**
 * Writes the body to a file of its own as it comes, hands the path to `work`, and removes it whatever happened. A body beyond `most` bytes is refused with
 * `refusal` at the byte beyond it; memory holds one piece at a time.
 */
export async function withUploadedFile<T>(
  request: Request,
  most: number,
  refusal: AppError,
  work: (file: string) => Promise<T>,
): Promise<T> {
  if (present >= MOST_AT_ONCE) throw later('Other files are being read at present.')
  present++
  const folder = await mkdtemp(path.join(os.tmpdir(), 'almanac-file-'))
  try {
    const file = path.join(folder, 'upload')
    try {
      await pipeline(Readable.from(piecesWithin(request, most, refusal)), createWriteStream(file, { mode: 0o600 }))
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOSPC') throw later('The server has no room for the file at present.')
      throw error
    }
    return await work(file)
  } finally {
    present--
    await rm(folder, { recursive: true, force: true })
  }
}
