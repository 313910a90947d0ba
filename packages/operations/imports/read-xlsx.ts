import readSheets from 'read-excel-file/node'
import { refuseFile, type SheetText } from './upload-limits.ts'

/** A sheet may unpack to this much text; more is no customer list, and would fill the memory. */
const MOST_UNPACKED_BYTES = 400 * 1024 * 1024

/** What the parts of a zip file say they unpack to, in bytes; null where its directory cannot be read. */
function unpackedBytes(file: Buffer): number | null {
  const end = file.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]))
  if (end < 0 || end + 22 > file.length) return null
  let at = file.readUInt32LE(end + 16)
  let total = 0
  for (let left = file.readUInt16LE(end + 10); left > 0; left--) {
    if (at + 46 > file.length || file.readUInt32LE(at) !== 0x02014b50) return null
    total += file.readUInt32LE(at + 24)
    at += 46 + file.readUInt16LE(at + 28) + file.readUInt16LE(at + 30) + file.readUInt16LE(at + 32)
  }
  return total
}

/** A number as people type it, never with an exponent: 5550104477, 0.3, 18.1 for 18.100000000000001. */
function decimal(value: number): string {
  const short = Number(value.toPrecision(15))
  const plain = String(short)
  return plain.includes('e') ? short.toFixed(Number.isInteger(short) ? 0 : 12).replace(/(\.\d*?)0+$/, '$1') : plain
}

function cellText(value: unknown): string {
  if (value === null || value === undefined) return ''
  if (value instanceof Date) return Number.isNaN(value.getTime()) ? '' : value.toISOString().slice(0, 10)
  if (typeof value === 'number') return decimal(value)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return String(value)
}

const hasText = (rows: readonly (readonly unknown[])[]) => rows.some((row) => row.some((cell) => cell !== null && cell !== ''))

/** Reads the first sheet of an XLSX file that holds anything: date cells as ISO days, numbers as decimal text, formulas as the value last worked out. */
export async function readXlsx(bytes: Uint8Array): Promise<SheetText> {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const unpacked = unpackedBytes(file)
  if (unpacked === null)
    throw refuseFile('This .xlsx file is damaged: its list of parts cannot be read. Open it in your spreadsheet and save it again.')
  if (unpacked > MOST_UNPACKED_BYTES) throw refuseFile('This .xlsx file unpacks to more than 400 MB. Split the list, or save it as CSV.')
  let sheets: Awaited<ReturnType<typeof readSheets>>
  try {
    sheets = await readSheets(file)
  } catch {
    throw refuseFile(
      'This .xlsx file could not be read; a sheet or a cell in it is damaged. Open it in your spreadsheet and save it again, or save it as CSV.',
    )
  }
  const filled = sheets.filter((one) => hasText(one.data))
  const first = filled[0]
  if (!first) throw refuseFile('No sheet of this file holds anything.')
  const rows = first.data.map((row) => row.map(cellText))
  const others = sheets.filter((one) => one !== first).map((one) => `"${one.sheet}"`)
  const sentences =
    others.length === 0
      ? [`The sheet "${first.sheet}" was read.`]
      : [`The sheet "${first.sheet}" was read, the first with rows; ${others.join(', ')} ${others.length === 1 ? 'was' : 'were'} left out.`]
  return { rows, sentences }
}
