import { inLane } from '@almanac/runtime/aside-turns'
import { AppError } from '@almanac/runtime/errors'
import { AsideOverrun, runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import type { HardnessBySupply } from '@almanac/service-rules/import/import-types'
import { addRow, emptyReading, type FileReading, type RowRead } from './read-rows.ts'
import type { ReadRowsInput } from './read-rows-aside.ts'

/** The largest list allowed is read in a few seconds; on a busy machine it may take several times as long. */
const ASIDE = { module: '@almanac/operations/imports/read-rows-aside', seconds: 60, memoryMb: 1024 }
/** Lists of one firm that are checked or wait to be. */
const MOST_WAITING = 2

/**
 * Reads every row by the firm's choices in a process of its own: the texts of a list may have been made to hold up whoever weighs them. `onRead` hears how
 * many are read; `seconds` is how long it may take.
 *
 * @throws AppError `invalid` where the rows take too much time or memory, `rate-limited` where the firm's last lists are still being read
 */
export async function readRowsApart(
  companyId: string,
  input: ReadRowsInput,
  { onRead, seconds = ASIDE.seconds }: { onRead?: (read: number) => void; seconds?: number } = {},
): Promise<FileReading> {
  if (inLane(ASIDE.module, companyId) >= MOST_WAITING)
    throw new AppError('rate-limited', 'Your company’s last lists are still being checked. Nothing was changed. Try again in a minute.')
  const reading = emptyReading()
  let read = 0
  const onPiece = (piece: unknown) => {
    for (const row of piece as RowRead[]) addRow(reading, row)
    read += (piece as RowRead[]).length
    onRead?.(read)
  }
  reading.hardnessBySupply = await runInWorkerThread<HardnessBySupply>({ ...ASIDE, seconds, companyId }, input, onPiece).catch(
    (error: unknown) => {
      if (!(error instanceof AsideOverrun)) throw error
      throw new AppError(
        'invalid',
        'This list takes too much time or memory to check. It’s kept as it came, and nothing was imported. Leave out columns with long texts, or split the list.',
      )
    },
  )
  return reading
}
