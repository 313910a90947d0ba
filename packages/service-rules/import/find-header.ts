import { cleanCell, isSilent } from './clean-cell.ts'
import { isProblemColumn } from './problem-file.ts'
import { scoreHeader } from './score-header.ts'

export interface HeaderFinding {
  /** Index of the header row, 0 being the first; null where the file has none and its first filled row is a record. */
  headerRow: number | null
  /** Index of the first row of records. */
  firstRecordRow: number
  reason: string
}

const ROWS_LOOKED_AT = 25

/**
 * The header row: the row near the top with the most cells that name a known field. Titles, dates of export and empty lines above it are passed over. One
 * name in two cells is enough, since a header names at least that.
 * `chosenLine`, counted from 1, is the line that a person named; null where they say that none names the columns.
 */
export function findHeader(rows: readonly (readonly string[])[], chosenLine?: number | null): HeaderFinding {
  const first = Math.max(
    0,
    rows.findIndex((row) => row.filter((cell) => !isSilent(cleanCell(cell))).length > 1),
  )
  if (chosenLine === null) return { headerRow: null, firstRecordRow: first, reason: 'No line names the columns, as you chose.' }
  if (chosenLine !== undefined)
    return { headerRow: chosenLine - 1, firstRecordRow: chosenLine, reason: `Line ${chosenLine} names the columns, as you chose.` }
  let best = -1
  let bestScore = 0
  for (const [index, row] of rows.slice(0, ROWS_LOOKED_AT).entries()) {
    const score = headerLikeness(row)
    if (score > bestScore) [best, bestScore] = [index, score]
  }
  if (bestScore >= 1.6) return { headerRow: best, firstRecordRow: best + 1, reason: `Line ${best + 1} names the columns.` }
  return { headerRow: null, firstRecordRow: first, reason: 'No line names the columns, so we judged them by what’s in them.' }
}

function headerLikeness(row: readonly string[]): number {
  const cells = row.map((cell) => cleanCell(cell)).filter((cell) => cell !== '')
  if (cells.length < 2) return 0
  let named = 0
  let foreign = 0
  for (const cell of cells) {
    const score = isProblemColumn(cell) ? 1 : Math.max(0, ...scoreHeader(cell).values())
    if (score >= 0.6) named += score
    if (/@|\d{3}/.test(cell) || cell.length > 40) foreign += 1
  }
  return named - foreign
}
