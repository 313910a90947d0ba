import { refuseFile } from './upload-limits.ts'

const begins = (bytes: Uint8Array, mark: number[]) => mark.every((byte, index) => bytes[index] === byte)

/** What other files are, by their first bytes, in words. */
const OTHERS: [number[], string][] = [
  [[0xd0, 0xcf, 0x11, 0xe0], 'This is an old .xls workbook'],
  [[0x25, 0x50, 0x44, 0x46], 'This is a PDF'],
  [[0x89, 0x50, 0x4e, 0x47], 'This is a picture'],
  [[0xff, 0xd8, 0xff], 'This is a picture'],
]

/** Whether a file is packed, as a workbook is. */
export const isWorkbook = (bytes: Uint8Array) => begins(bytes, [0x50, 0x4b])

/** Refuses, by its first bytes, a file that is no list, whatever its name. */
export function refuseForeign(bytes: Uint8Array): void {
  if (bytes.length === 0) throw refuseFile('The file is empty.')
  const other = OTHERS.find(([mark]) => begins(bytes, mark))
  if (other) throw refuseFile(`${other[1]}, which we can’t read. Save the list as .xlsx or CSV and import that.`)
}
