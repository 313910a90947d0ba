import 'server-only'
import { createWriteStream } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { AppError } from '@almanac/runtime/errors'
import { piecesWithin } from './body.ts'

/** Files that come in or are read at one time: each takes its limit of disk. One of a firm, so that no firm's files keep out another's. */
const MOST_AT_ONCE = 32

/** What is held of a file before it must be on the disk: each write waits for its turn among all other requests. */
const HELD_BYTES = 1024 * 1024

const present = new Set<string>()

const noRoom = () =>
  new AppError('unavailable', 'The server has no room for the file right now. Nothing was imported. Try again in a minute.')

function refuseCrowd(companyId: string): void {
  const why = present.has(companyId)
    ? 'Your company’s last file is still being read.'
    : present.size >= MOST_AT_ONCE
      ? 'Many files are being read right now.'
      : null
  if (why) throw new AppError('rate-limited', `${why} Nothing was imported. Try again in a minute.`)
}

/**
 * Writes the body of a firm's request to a file of its own as it comes, hands the path to `work`, and removes it whatever happened. A body beyond `most` bytes is refused with
 * `refusal` at the byte beyond it; memory holds a megabyte of it.
 */
export async function withUploadedFile<T>(
  request: Request,
  companyId: string,
  most: number,
  refusal: AppError,
  work: (file: string) => Promise<T>,
): Promise<T> {
  refuseCrowd(companyId)
  present.add(companyId)
  let folder: string | undefined
  try {
    folder = await mkdtemp(path.join(os.tmpdir(), 'almanac-file-'))
    const file = path.join(folder, 'upload')
    try {
      await pipeline(
        Readable.from(piecesWithin(request, most, refusal)),
        createWriteStream(file, { mode: 0o600, highWaterMark: HELD_BYTES }),
      )
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOSPC') throw noRoom()
      throw error
    }
    return await work(file)
  } finally {
    present.delete(companyId)
    if (folder) await rm(folder, { recursive: true, force: true })
  }
}
