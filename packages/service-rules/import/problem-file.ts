import type { RowProblem } from './import-types.ts'
import { neutraliseFormula } from './neutralise.ts'

/** The columns put behind the firm's own; a re-import leaves them out. */
export const problemHeader = ['Fix: line', 'Fix: column', 'Fix: value', 'Fix: reason'] as const

export interface ProblemRow {
  /** Line in the firm's file, the first being 1. */
  line: number
  cells: readonly string[]
  problems: readonly RowProblem[]
}

/** True for a column that a problem file added; an older release called them "Mend". */
export function isProblemColumn(header: string): boolean {
  return /^'?(?:fix|mend): (?:line|column|value|reason)$/i.test(header.trim())
}

/**
 * The rows of a file to fix and import again: the firm's header and cells as they came, then line, column, value and reason; several problems of
 * one row stand in the same cells, parted by " | ", since a second row would be imported twice. Every cell is safe to open in a
 * spreadsheet; reading the file back gives the original texts.
 */
export function problemRows(header: readonly string[], rows: readonly ProblemRow[]): string[][] {
  const kept = header.map((title, column) => ({ title, column })).filter(({ title }) => !isProblemColumn(title))
  const width = Math.max(header.length, ...rows.map((row) => row.cells.length))
  for (let column = header.length; column < width; column++) kept.push({ title: '', column })
  const first = [...kept.map(({ title }) => title), ...problemHeader]
  const rest = rows.map((row) => [
    ...kept.map(({ column }) => row.cells[column] ?? ''),
    String(row.line),
    row.problems.map((problem) => problem.column).join(' | '),
    row.problems.map((problem) => problem.value).join(' | '),
    row.problems.map((problem) => problem.reason).join(' | '),
  ])
  return [first, ...rest].map((cells) => cells.map(neutraliseFormula))
}
