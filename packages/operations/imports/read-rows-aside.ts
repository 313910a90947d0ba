import { answerAside } from '@almanac/runtime/answer-aside'
import { hardnessBySupply } from '@almanac/service-rules/import/hardness-by-supply'
import type { ColumnMapping, HardnessBySupply, RowOptions } from '@almanac/service-rules/import/import-types'
import { type RowRead, readOneRow, type StoredRow } from './read-rows.ts'

export type ReadRowsInput = { rows: Omit<StoredRow, 'id'>[]; mapping: ColumnMapping; options: RowOptions }

const PIECE_ROWS = 200
/** Whoever takes a piece unpacks it in one go. */
const PIECE_SIGNS = 500_000

const signsOf = (cells: readonly string[]) => cells.reduce((sum, cell) => sum + cell.length, 0)

/** Reads a list's rows and hands over what each wants, a few hundred at a time; answers what they say of each supply's hardness. */
async function* readRowsAside({ rows, mapping, options }: ReadRowsInput): AsyncGenerator<RowRead[], HardnessBySupply> {
  const known = hardnessBySupply(
    rows.map((row) => row.cells),
    mapping,
  )
  let piece: RowRead[] = []
  let signs = 0
  for (const row of rows) {
    piece.push(readOneRow(row, mapping, { ...options, hardnessBySupply: known }))
    signs += signsOf(row.cells)
    if (piece.length < PIECE_ROWS && signs < PIECE_SIGNS) continue
    yield piece
    piece = []
    signs = 0
  }
  if (piece.length > 0) yield piece
  return known
}

answerAside(readRowsAside)
