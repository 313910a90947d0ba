import { isEmptyRow } from '@almanac/service-rules/import/read-row'
import { readCsv } from './read-csv.ts'
import { readXlsx } from './read-xlsx.ts'
import { isWorkbook, refuseForeign } from './refuse-foreign.ts'
import { fileTooLarge, MOST_BYTES, MOST_ROWS, refuseBeyondLimits, refuseFile, type SheetText, tooManyRows } from './upload-limits.ts'

/**
 * Reads a firm's file, CSV or XLSX by its contents rather than its name, as rows of text. Refuses, with a sentence, what is no spreadsheet, empty,
 * or beyond what `upload-limits.ts` allows.
 */
export async function readUpload(bytes: Uint8Array, chosenSheet?: string): Promise<SheetText> {
  refuseForeign(bytes)
  if (bytes.length > MOST_BYTES) throw fileTooLarge()
  const sheet = isWorkbook(bytes) ? await readXlsx(bytes, chosenSheet) : readCsv(bytes)
  refuseBeyondLimits(sheet.rows)
  const filled = sheet.rows.filter((row) => !isEmptyRow(row)).length
  if (filled === 0) throw refuseFile('The file has no rows.')
  if (filled > MOST_ROWS + 25) throw tooManyRows(filled)
  return sheet
}
