import readSheets from 'read-excel-file/node'
import { lookIntoXlsx } from './look-into-xlsx.ts'
import { refuseFile, type SheetText } from './upload-limits.ts'

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

/** Reads the first sheet of an XLSX file that holds anything, or the one that was chosen: date cells as ISO days, numbers as decimal text, formulas as the value last worked out. */
export async function readXlsx(bytes: Uint8Array, chosen?: string): Promise<SheetText> {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  lookIntoXlsx(file)
  let sheets: Awaited<ReturnType<typeof readSheets>>
  try {
    sheets = await readSheets(file)
  } catch {
    throw refuseFile(
      'This .xlsx file could not be read; a sheet or a cell in it is damaged. Open it in your spreadsheet and save it again, or save it as CSV.',
    )
  }
  const filled = sheets.filter((one) => hasText(one.data))
  if (filled.length === 0) throw refuseFile('Every sheet in this file is empty.')
  const first = chosen === undefined ? filled[0] : filled.find((one) => one.sheet === chosen)
  if (!first) throw refuseFile(`The file has no sheet "${chosen}" with rows.`)
  const rows = first.data.map((row) => row.map(cellText))
  const others = sheets.filter((one) => one !== first).map((one) => `"${one.sheet}"`)
  const sentences =
    others.length === 0
      ? [`The sheet "${first.sheet}" was read.`]
      : [
          `The sheet "${first.sheet}" was read, ${chosen === undefined ? 'the first with rows' : 'as you chose'}; ${others.join(', ')} ${others.length === 1 ? 'was' : 'were'} left out.`,
        ]
  return { rows, sentences, sheet: first.sheet, sheets: filled.map((one) => one.sheet) }
}
