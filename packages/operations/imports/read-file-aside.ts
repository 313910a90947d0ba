import { readFile } from 'node:fs/promises'
import { answerAside } from '@almanac/runtime/answer-aside'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import type { EarlierChoices } from '@almanac/service-rules/import/earlier-choices'
import { isEmptyRow } from '@almanac/service-rules/import/read-row'
import { suggestColumns } from '@almanac/service-rules/import/suggest-columns'
import type { FileSuggestion } from '@almanac/service-rules/import/suggestion-types'
import { ok, type Result, refuse } from '@almanac/units/result'
import type { ReadAs } from './batch-mapping.ts'
import { readUpload } from './read-upload.ts'
import { MOST_ROWS, refuseFile, type SheetText, tooManyRows } from './upload-limits.ts'

/** A file by its path on this machine, what the firm chose for the columns of earlier ones, and how a person wants it read. */
export type ReadFileInput = { file: string; today: string; earlier: EarlierChoices; readAs?: ReadAs }

/**
 * Rows that say something, as they came, and their number: a JSON array of rows as import_row takes them, with an id, the cells, and the line as the spreadsheet counts. As bytes,
 * so that the web server, which only hands them on, never holds a list of tens of thousands of rows as objects.
 */
export type FilePiece = { rows: number; json: Uint8Array }
export type ReadFileAnswer = FileSuggestion & Omit<SheetText, 'rows'>

const PIECE = 1000
/** PostgreSQL's text holds no zero byte. */
const storable = (text: string) => text.replaceAll('\u0000', '')

/** Reads a firm's file: hands its rows over a thousand at a time, then what its columns seem to hold, or why the file is refused. */
async function* readFileAside({ file, today, earlier, readAs }: ReadFileInput): AsyncGenerator<FilePiece, Result<ReadFileAnswer>> {
  try {
    const sheet = await readUpload(await readFile(file), readAs?.sheet)
    const rows = sheet.rows.map((cells) => cells.map(storable))
    const found = suggestColumns(rows, today, earlier, readAs?.headingLine)
    const records = rows
      .map((cells, index) => ({ cells, line: index + 1 }))
      .filter(({ cells, line }) => line > found.firstRecordRow && !isEmptyRow(cells))
    if (records.length === 0)
      throw refuseFile(readAs ? 'Read like this, there are no rows.' : 'The file has a header but no rows below it.')
    if (records.length > MOST_ROWS) throw tooManyRows(records.length)
    for (let start = 0; start < records.length; start += PIECE) {
      const some = records.slice(start, start + PIECE)
      yield { rows: some.length, json: Buffer.from(JSON.stringify(some.map((row) => ({ id: newId(), ...row })))) }
    }
    const { rows: _rows, ...read } = sheet
    return ok({ ...found, ...read })
  } catch (error) {
    if (error instanceof AppError) return refuse(error.message)
    throw error
  }
}

answerAside(readFileAside)
