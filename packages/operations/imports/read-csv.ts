import Papa from 'papaparse'
import { decodeText } from './decode-text.ts'
import { guessDelimiter } from './guess-delimiter.ts'
import { MOST_LINES, refuseFile, type SheetText, tooManyLines } from './upload-limits.ts'

const WORDS: Record<string, string> = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars' }

/** Reads a CSV file. The delimiter is guessed from the first lines; every record keeps its place, so that line numbers are those a spreadsheet shows. */
export function readCsv(bytes: Uint8Array): SheetText {
  const { text, sentence } = decodeText(bytes)
  const delimiter = guessDelimiter(text)
  const parsed = Papa.parse<string[]>(text, {
    delimiter,
    skipEmptyLines: false,
    preview: MOST_LINES + 1,
  })
  if (parsed.data.length > MOST_LINES) throw tooManyLines()
  const unclosed = parsed.errors.find((error) => error.type === 'Quotes')
  if (unclosed)
    throw refuseFile(
      `A quotation mark near line ${(unclosed.row ?? 0) + 1} is never closed, so the rows behind it cannot be told apart. Fix that line, or save the file as .xlsx.`,
    )
  const oneColumn = parsed.data.every((row) => row.length <= 1)
  const parted = oneColumn ? 'It has one column.' : `Its columns are parted by ${WORDS[delimiter] ?? `"${delimiter}"`}.`
  return { rows: parsed.data, sentences: [sentence, parted] }
}
