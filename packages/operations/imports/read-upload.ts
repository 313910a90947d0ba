import { isEmptyRow } from '@almanac/service-rules/import/read-row'
import { readCsv } from './read-csv.ts'
import { readXlsx } from './read-xlsx.ts'
import { fileTooLarge, MOST_BYTES, MOST_ROWS, refuseBeyondLimits, refuseFile, type SheetText, tooManyRows } from './upload-limits.ts'

const begins = (bytes: Uint8Array, ...mark: number[]) => mark.every((byte, index) => bytes[index] === byte)

/** What other files are, by their first bytes, in words. */
function foreign(bytes: Uint8Array): string | null {
  if (begins(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return 'This is an old .xls workbook'
  if (begins(bytes, 0x25, 0x50, 0x44, 0x46)) return 'This is a PDF'
  if (begins(bytes, 0x89, 0x50, 0x4e, 0x47) || begins(bytes, 0xff, 0xd8, 0xff)) return 'This is a picture'
  return null
}

/**
 * Reads a firm's file, CSV or XLSX by its contents rather than its name, as rows of text. Refuses, with a sentence, what is no spreadsheet, empty,
 * or beyond what `upload-limits.ts` allows.
 */
export async function readUpload(bytes: Uint8Array): Promise<SheetText> {
  if (bytes.length === 0) throw refuseFile('The file is empty.')
  if (bytes.length > MOST_BYTES) throw fileTooLarge()
  const other = foreign(bytes)
  if (other) throw refuseFile(`${other}, which we can’t read. Save the list as .xlsx or CSV and import that.`)
  const sheet = begins(bytes, 0x50, 0x4b) ? await readXlsx(bytes) : readCsv(bytes)
  refuseBeyondLimits(sheet.rows)
  const filled = sheet.rows.filter((row) => !isEmptyRow(row)).length
  if (filled === 0) throw refuseFile('The file has no rows.')
  if (filled > MOST_ROWS + 25) throw tooManyRows(filled)
  return sheet
}
