import type { HeaderFinding } from './find-header.ts'
import type { ColumnChoice } from './import-types.ts'

export type Confidence = 'sure' | 'likely' | 'guess' | 'none'

/** A column with the field it seems to hold. The whole is a suggestion: a person may change any part before the file is read. */
export interface ColumnSuggestion extends ColumnChoice {
  header: string
  confidence: Confidence
  /** Why, in one sentence. */
  reason: string
  /** A question only a person can answer before the column can be read, such as which unit; null where there is none. */
  ask: string | null
  /** A few of its values, to show beside the choice. */
  examples: string[]
}

export interface FileSuggestion extends HeaderFinding {
  header: string[]
  columns: ColumnSuggestion[]
}
