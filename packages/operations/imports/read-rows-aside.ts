import { answerAside } from '@almanac/runtime/answer-aside'
import type { ColumnMapping, RowOptions } from '@almanac/service-rules/import/import-types'
import { type RowRead, readOneRow, type StoredRow } from './read-rows.ts'

export type ReadRowsInput = { rows: Omit<StoredRow, 'id'>[]; mapping: ColumnMapping; options: RowOptions }

const PIECE_ROWS = 200
/** Whoever takes a piece unpacks it in one go. */
const PIECE_SIGNS = 500_000

const signsOf = (cells: readonly string[]) => cells.reduce((sum, cell) => sum + cell.length, 0)

/** Reads a list's rows and hands over what each wants, a few hundred at a time; answers how many there were. */
async function* readRowsAside({ rows, mapping, options }: ReadRowsInput): AsyncGenerator<RowRead[], number> {
  let piece: RowRead[] = []
  let signs = 0
  for (const row of rows) {
    piece.push(readOneRow(row, mapping, options))
    signs += signsOf(row.cells)
    if (piece.length < PIECE_ROWS && signs < PIECE_SIGNS) continue
    yield piece
    piece = []
    signs = 0
  }
  if (piece.length > 0) yield piece
  return rows.length
}

answerAside(readRowsAside)
