import { AppError } from '@almanac/runtime/errors'
import { columnLetters } from '@almanac/service-rules/import/clean-cell'
import { countInSentence } from '@almanac/units/format-number'

/** What an upload may be: beyond it no list of customers goes, and the page would wait for minutes. */
export const MOST_BYTES = 20 * 1024 * 1024
export const MOST_ROWS = 50_000
export const MOST_COLUMNS = 200
export const MOST_CELLS = 2_000_000
export const MOST_SHEETS = 50
/** Lines of a text file, blank ones included. */
export const MOST_LINES = 200_000
/** A workbook's parts, unpacked: fifty thousand rows of forty columns take about half. */
export const MOST_UNPACKED_BYTES = 150 * 1024 * 1024
/** Signs in one cell. The longest notes of a customer seen in real lists have a few hundred; common practice, no source. */
const LONGEST_CELL = 4_000
/** Signs in all cells together: a workbook may say one text a million times. */
const MOST_TEXT = 40 * 1024 * 1024

/** How the letters of a text file are written. */
export type FileEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'

/** A file as rows of text, and what was taken while reading it, in sentences; of a workbook which sheet it was, of those that hold anything. */
export type SheetText = {
  rows: string[][]
  sentences: string[]
  delimiter?: string
  encoding?: FileEncoding
  sheet?: string
  sheets?: string[]
}

/** The refusal of a file: nothing of it was stored. */
export function refuseFile(why: string): AppError {
  return new AppError('invalid', `${why} Nothing was imported.`)
}

/** The refusal of a file of more than 20 MB, from whoever notices first. */
export const fileTooLarge = () => refuseFile('The file is larger than 20 MB. Split the list into two files.')

export const TAKES_TOO_MUCH = 'This file takes too much time or memory to read. Copy just the list into a new sheet and save it as .xlsx.'

/** The refusal of a list that is too long. */
export function tooManyRows(rows: number): AppError {
  return refuseFile(
    `The file has ${countInSentence(rows)} rows. At most ${countInSentence(MOST_ROWS)} are read at one time. Split the list.`,
  )
}

/** The refusal of a text file that goes on and on. */
export function tooManyLines(): AppError {
  return refuseFile(`The file has more than ${countInSentence(MOST_LINES)} lines. Delete the blank ones, or split the list.`)
}

/** The refusal of a list that is too wide; `last` is the column it reaches to, counted from 0, or a cell's name. */
export function tooManyColumns(last: number | string): AppError {
  const where = typeof last === 'number' ? `column ${columnLetters(last)}` : `cell ${last}`
  return refuseFile(
    `The list reaches to ${where}. At most ${MOST_COLUMNS} columns are read. Delete what lies beyond your list and save again.`,
  )
}

/** The refusal of a sheet whose last cell lies far from its list. */
export function tooManyCells(rows: number, columns: number): AppError {
  return refuseFile(
    `The sheet reaches to row ${countInSentence(rows)} and column ${columnLetters(columns - 1)}: ${countInSentence(rows * columns)} cells, and at most ${countInSentence(MOST_CELLS)} are read. Delete what lies beyond your list.`,
  )
}

/** The refusal of a list whose cells are too many all together. */
export function tooManyInAll(cells: number): AppError {
  return refuseFile(`The file has ${countInSentence(cells)} cells; at most ${countInSentence(MOST_CELLS)} are read. Split the list.`)
}

/** Refuses rows that no rule should weigh: too many or too long cells. Looks at nothing but lengths. */
export function refuseBeyondLimits(rows: readonly (readonly string[])[]): void {
  let cells = 0
  let text = 0
  let long = 0
  let first: { line: number; column: number; signs: number } | null = null
  for (const [index, row] of rows.entries()) {
    if (row.length > MOST_COLUMNS) throw tooManyColumns(row.length - 1)
    cells += row.length
    for (const [column, cell] of row.entries()) {
      text += cell.length
      if (cell.length <= LONGEST_CELL) continue
      long++
      first ??= { line: index + 1, column, signs: cell.length }
    }
  }
  if (first) {
    const others = long > 1 ? ` So do ${countInSentence(long - 1)} others.` : ''
    throw refuseFile(
      `The cell in line ${first.line}, column ${columnLetters(first.column)} holds ${countInSentence(first.signs)} characters; at most ${countInSentence(LONGEST_CELL)} are read.${others} Shorten it, or look for a stray quotation mark there.`,
    )
  }
  if (cells > MOST_CELLS) throw tooManyInAll(cells)
  if (text > MOST_TEXT) throw refuseFile('The cells hold more than 40 million characters. Split the list.')
}
