import type { ImportColumn, ImportColumnChoice, ImportSupply } from '@almanac/contract/imports'
import type { ColumnMapping, HardnessBySupply } from '@almanac/service-rules/import/import-types'
import type { FileEncoding } from './upload-limits.ts'

/** How a person wants a file read that was read otherwise: another sheet of a workbook, another line for the headings (from 1), or null for none. */
export type ReadAs = { sheet?: string; headingLine: number | null }

/** What import_batch.mapping holds: each column with the suggestion and the choice, and how the file was read; the delimiter and the encoding of a text file since they are kept; the day somebody said the list was right; what the names of supplies in it mean; of a workbook its sheets and which was read. */
export type StoredMapping = {
  columns: ImportColumn[]
  sentences: string[]
  checked: boolean
  delimiter?: string
  encoding?: FileEncoding
  listRightOn?: string | null
  supplies?: ImportSupply[]
  /** What the rows said of each supply's hardness at the check: a page of them is shown by it. */
  hardnessBySupply?: HardnessBySupply
  sheet?: string
  sheets?: string[]
  readAs?: ReadAs
}

/** Lists before one whose columns and supplies may have been chosen otherwise than suggested. */
export const LISTS_REMEMBERED = 5

/** The choices of a batch, as the reading rules take them. */
export function mappingOf(header: string[], columns: readonly ImportColumnChoice[]): ColumnMapping {
  return { header, columns: [...columns] }
}
