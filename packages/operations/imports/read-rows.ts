import type { ColumnMapping, HardnessBySupply, RowOptions } from '@almanac/service-rules/import/import-types'
import { readRow } from '@almanac/service-rules/import/read-row'
import { entitiesFromRecord, type RowWants } from './entities-from-record.ts'
import { emptyWants, type FileWants, gatherRow } from './gather-wanted.ts'
import type { CellProblem } from './plan-types.ts'

export type StoredRow = { id: string; line: number; cells: string[] }

/** What one row wants, or why it could not be understood; plain data. */
export type RowRead = { line: number; problems: CellProblem[]; wants: RowWants | null; assumptions: string[] }

/** What a file wants, the rows that were left out, and what a person must look at of these and of the others. */
export type FileReading = {
  wants: FileWants
  leftOut: Set<number>
  problems: Map<number, CellProblem[]>
  assumptions: Map<number, string[]>
  /** What rows that leave no doubt say of each supply's hardness. */
  hardnessBySupply: HardnessBySupply
}

export function emptyReading(): FileReading {
  return { wants: emptyWants(), leftOut: new Set(), problems: new Map(), assumptions: new Map(), hardnessBySupply: {} }
}

/** Reads one row by the firm's choices. */
export function readOneRow({ line, cells }: Omit<StoredRow, 'id'>, mapping: ColumnMapping, options: RowOptions): RowRead {
  const result = readRow(cells, mapping, options)
  const { problems } = result
  if (!result.ok) return { line, problems, wants: null, assumptions: [] }
  return {
    line,
    problems,
    wants: entitiesFromRecord(result.record, line, options.listRightOn),
    assumptions: result.assumptions.map((one) => one.sentence),
  }
}

/** Adds a row, in the order of the file. A bad row stops nothing. */
export function addRow(reading: FileReading, row: RowRead): void {
  if (row.problems.length > 0) reading.problems.set(row.line, row.problems)
  if (row.wants) gatherRow(reading.wants, row.wants, row.line)
  else reading.leftOut.add(row.line)
  if (row.assumptions.length > 0) reading.assumptions.set(row.line, row.assumptions)
}
