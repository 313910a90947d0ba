import { isEmptyRow } from '@almanac/service-rules/import/read-row'
import { readCsv } from './read-csv.ts'
import { readXlsx } from './read-xlsx.ts'
import { fileTooLarge, MOST_BYTES, MOST_COLUMNS, MOST_ROWS, refuseFile, type SheetText } from './upload-limits.ts'

const begins = (bytes: Uint8Array, ...mark: number[]) => mark.every((byte, index) => bytes[index] === byte)

/** What other files are, by their first bytes, in words. */
function foreign(bytes: Uint8Array): string | null {
  if (begins(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return 'This is a workbook of the old .xls kind'
  if (begins(bytes, 0x25, 0x50, 0x44, 0x46)) return 'This is a PDF'
  if (begins(bytes, 0x89, 0x50, 0x4e, 0x47) || begins(bytes, 0xff, 0xd8, 0xff)) return 'This is a picture'
  return null
}

/**
 * Reads a firm's file, CSV or XLSX by its contents rather than its name, as rows of text. Refuses, with a sentence, what is no spreadsheet, empty,
 * or beyond 20 MB or 50,000 rows.
 */
export async function readUpload(bytes: Uint8Array): Promise<SheetText> {
  if (bytes.length === 0) throw refuseFile('The file is empty.')
  if (bytes.length > MOST_BYTES) throw fileTooLarge()
  const other = foreign(bytes)
  if (other) throw refuseFile(`${other}, which cannot be read here. Save the list as .xlsx or as CSV and bring that in.`)
  const sheet = begins(bytes, 0x50, 0x4b) ? await readXlsx(bytes) : readCsv(bytes)
  const filled = sheet.rows.filter((row) => !isEmptyRow(row)).length
  if (filled === 0) throw refuseFile('The file holds no rows.')
  if (filled > MOST_ROWS + 25)
    throw refuseFile(
      `The file holds ${filled.toLocaleString('en-US')} rows; at most ${MOST_ROWS.toLocaleString('en-US')} are read at one time. Split the list.`,
    )
  if (sheet.rows.some((row) => row.length > MOST_COLUMNS))
    throw refuseFile(`A row of the file has more than ${MOST_COLUMNS} columns. Keep the columns that matter and bring that in.`)
  return sheet
}
