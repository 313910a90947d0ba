import { AppError } from '@almanac/runtime/errors'

/** What an upload may be: beyond it the page would wait for minutes and the browser's tab would not. */
export const MOST_BYTES = 20 * 1024 * 1024
export const MOST_ROWS = 50_000
export const MOST_COLUMNS = 200

/** A file as rows of text, and what was taken while reading it, in sentences. */
export type SheetText = { rows: string[][]; sentences: string[] }

/** The refusal of a file: nothing of it was stored. */
export function refuseFile(why: string): AppError {
  return new AppError('invalid', `${why} Nothing was brought in.`)
}

/** The refusal of a file of more than 20 MB, from whoever notices first. */
export const fileTooLarge = () => refuseFile('The file is larger than 20 MB. Split the list into two files.')
