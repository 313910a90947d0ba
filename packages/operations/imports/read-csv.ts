import Papa from 'papaparse'
import { decodeText } from './decode-text.ts'
import { guessDelimiter } from './guess-delimiter.ts'
import {
  MOST_CELLS,
  MOST_COLUMNS,
  MOST_LINES,
  refuseFile,
  type SheetText,
  tooManyColumns,
  tooManyInAll,
  tooManyLines,
} from './upload-limits.ts'

const WORDS: Record<string, string> = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars' }
const [NEW_LINE, RETURN] = [10, 13]

/** Refuses a text of too many lines before it is taken apart: twenty megabytes may be twenty million of them. */
function refuseManyLines(text: string): void {
  for (const end of ['\n', '\r']) {
    let lines = 0
    for (let at = text.indexOf(end); at >= 0; at = text.indexOf(end, at + 1)) if (++lines > MOST_LINES) throw tooManyLines()
  }
}

/** Refuses too many cells before any is made. Where a quotation mark stands, only the cells themselves can tell, afterwards. */
function refuseManyCells(text: string, delimiter: string): void {
  if (text.includes('"')) return
  const between = delimiter.charCodeAt(0)
  let cells = 0
  let columns = 1
  let widest = 1
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at)
    if (sign === between) columns++
    else if (sign === RETURN || (sign === NEW_LINE && text.charCodeAt(at - 1) !== RETURN)) {
      cells += columns
      widest = Math.max(widest, columns)
      columns = 1
    }
  }
  widest = Math.max(widest, columns)
  if (widest > MOST_COLUMNS) throw tooManyColumns(widest - 1)
  if (cells + columns > MOST_CELLS) throw tooManyInAll(cells + columns)
}

/** Reads a CSV file. The delimiter is guessed from the first lines; every record keeps its place, so that line numbers are those a spreadsheet shows. */
export function readCsv(bytes: Uint8Array): SheetText {
  const { text, sentence, encoding } = decodeText(bytes)
  refuseManyLines(text)
  const delimiter = guessDelimiter(text)
  refuseManyCells(text, delimiter)
  const parsed = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false })
  const unclosed = parsed.errors.find((error) => error.type === 'Quotes')
  if (unclosed)
    throw refuseFile(
      `A quotation mark near line ${(unclosed.row ?? 0) + 1} is never closed, so we can’t tell the rows after it apart. Fix that line, or save the file as .xlsx.`,
    )
  const oneColumn = parsed.data.every((row) => row.length <= 1)
  const parted = oneColumn ? 'It has one column.' : `Its columns are separated by ${WORDS[delimiter] ?? `"${delimiter}"`}.`
  return { rows: parsed.data, sentences: [sentence, parted], delimiter, encoding }
}
