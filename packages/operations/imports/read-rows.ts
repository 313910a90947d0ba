import { setImmediate } from 'node:timers/promises'
import type { ColumnMapping } from '@almanac/service-rules/import/import-types'
import { readRow } from '@almanac/service-rules/import/read-row'
import { emptyWants, type FileWants, gatherRow } from './gather-wanted.ts'
import type { Problem } from './plan-types.ts'

export type StoredRow = { id: string; line: number; cells: string[] }

/** What a file wants, and the problems of its rows that could not be understood. */
export type FileReading = { wants: FileWants; problems: Map<number, Problem[]>; assumptions: Map<number, string[]> }

const PAUSE_EVERY = 500

/** Reads every row by the firm's choices. A bad row stops nothing. `onProgress` hears how many are read; the process breathes in between. */
export async function readRows(
  rows: readonly StoredRow[],
  mapping: ColumnMapping,
  today: string,
  onProgress: (read: number) => Promise<void>,
): Promise<FileReading> {
  const reading: FileReading = { wants: emptyWants(), problems: new Map(), assumptions: new Map() }
  for (const [index, row] of rows.entries()) {
    if (index > 0 && index % PAUSE_EVERY === 0) {
      await setImmediate()
      await onProgress(index)
    }
    const result = readRow(row.cells, mapping, { today })
    if (!result.ok) {
      reading.problems.set(row.line, result.problems)
      continue
    }
    gatherRow(reading.wants, result.record, row.line)
    if (result.assumptions.length > 0)
      reading.assumptions.set(
        row.line,
        result.assumptions.map((one) => one.sentence),
      )
  }
  return reading
}
