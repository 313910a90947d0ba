import { inflateRawSync } from 'node:zlib'
import { MOST_CELLS, MOST_COLUMNS, MOST_SHEETS, MOST_UNPACKED_BYTES, refuseFile, tooManyCells, tooManyColumns } from './upload-limits.ts'

type Part = { name: string; packed: Buffer; isDeflated: boolean }

const damaged = () =>
  refuseFile('This .xlsx file is damaged: its list of parts cannot be read. Open it in your spreadsheet and save it again.')

/** The parts that a zip file's directory names (APPNOTE 6.3, sections 4.3.7 and 4.3.12). */
function* partsOf(file: Buffer): Generator<Part> {
  const end = file.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]))
  if (end < 0 || end + 22 > file.length) throw damaged()
  let at = file.readUInt32LE(end + 16)
  for (let left = file.readUInt16LE(end + 10); left > 0; left--) {
    if (at + 46 > file.length || file.readUInt32LE(at) !== 0x02014b50) throw damaged()
    const nameLength = file.readUInt16LE(at + 28)
    const local = file.readUInt32LE(at + 42)
    if (local + 30 > file.length) throw damaged()
    const begin = local + 30 + file.readUInt16LE(local + 26) + file.readUInt16LE(local + 28)
    yield {
      name: file.toString('latin1', at + 46, at + 46 + nameLength),
      packed: file.subarray(begin, begin + file.readUInt32LE(at + 20)),
      isDeflated: file.readUInt16LE(at + 10) === 8,
    }
    at += 46 + nameLength + file.readUInt16LE(at + 30) + file.readUInt16LE(at + 32)
  }
}

/** Unpacks a part, as long as it stays below so many bytes: what its directory says of its size may be a lie. */
function unpack({ packed, isDeflated }: Part, mostBytes: number): Buffer {
  const tooLarge = refuseFile('This .xlsx file unpacks to more than 150 MB. Copy just the list into a new sheet and save that.')
  if (mostBytes <= 0) throw tooLarge
  if (!isDeflated) return packed
  try {
    return inflateRawSync(packed, { maxOutputLength: mostBytes })
  } catch (error) {
    throw (error as { code?: string }).code === 'ERR_BUFFER_TOO_LARGE' ? tooLarge : damaged()
  }
}

/** The number of a column by its letters: A is 1. */
const columnNumber = (letters: string) => [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0)

/** Refuses a sheet by its furthest filled cell: a reader fills the rows and columns up to there, however empty they are. A cell that is only formatted is none. */
function refuseFarCells(sheet: string): void {
  let rows = 0
  let columns = 0
  let widest = ''
  for (const [, attributes = ''] of sheet.matchAll(/<c\s([^>]{0,300})>/g)) {
    if (attributes.endsWith('/')) continue
    const [, letters = '', digits = ''] = /(?:^|\s)r=["']([A-Z]{1,3})(\d{1,7})["']/.exec(attributes) ?? []
    const column = columnNumber(letters)
    if (column > columns) [columns, widest] = [column, `${letters}${digits}`]
    rows = Math.max(rows, Number(digits))
  }
  if (columns > MOST_COLUMNS) throw tooManyColumns(widest)
  if (rows * columns > MOST_CELLS) throw tooManyCells(rows, columns)
}

/** Looks into a workbook before it is read: refuses what unpacks to too much, has too many sheets, or has a cell far from everything. */
export function lookIntoXlsx(file: Buffer): void {
  let left = MOST_UNPACKED_BYTES
  let sheets = 0
  for (const part of partsOf(file)) {
    if (!/\.xml(?:\.rels)?$/.test(part.name)) continue
    const unpacked = unpack(part, left)
    left -= unpacked.length
    if (!/(?:^|\/)worksheets\/[^/]+\.xml$/.test(part.name)) continue
    if (++sheets > MOST_SHEETS)
      throw refuseFile(`This workbook has more than ${MOST_SHEETS} sheets. Copy the list into a workbook of its own.`)
    refuseFarCells(unpacked.toString('latin1'))
  }
}
