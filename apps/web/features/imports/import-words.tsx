import type { ImportBatchRow, ImportCounts } from '@almanac/contract/imports'
import { StatusWord } from '@almanac/ui/status-word'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'

export const plural = (value: number, one: string, many: string, display: NumberDisplay) =>
  `${showWhole(value, display)} ${value === 1 ? one : many}`

const STATES = {
  reading: { shape: 'half', tone: 'water', word: 'being read' },
  refused: { shape: 'triangle', tone: 'danger', word: 'could not be read' },
  draft: { shape: 'dashed', tone: 'soft', word: 'draft, nothing imported' },
  discarded: { shape: 'cross', tone: 'soft', word: 'discarded' },
  queued: { shape: 'hollow', tone: 'water', word: 'waiting' },
  applying: { shape: 'half', tone: 'water', word: 'importing' },
  applied: { shape: 'tick', tone: 'done', word: 'imported' },
  undone: { shape: 'cross', tone: 'soft', word: 'undone' },
  failed: { shape: 'triangle', tone: 'danger', word: 'stopped, nothing imported' },
} as const

/** The state of an import as a word with its shape. */
export function StateWord({ state }: { state: ImportBatchRow['state'] }) {
  const { shape, tone, word } = STATES[state]
  return (
    <StatusWord shape={shape} tone={tone}>
      {word}
    </StatusWord>
  )
}

/** What an import came to, in one line; rows that are gone since are said as gone, not as what they were. */
export function outcomeWords({ counts, gone, state }: Pick<ImportBatchRow, 'counts' | 'gone' | 'state'>, display: NumberDisplay): string {
  if (state === 'refused') return 'nothing imported'
  if (gone) return `${showWhole(gone.rows, display)} no longer on record`
  return counts ? countWords(counts, display) : 'not checked yet'
}

/** Rows by what becomes of them, in one line. */
export function countWords(counts: ImportCounts, display: NumberDisplay): string {
  const parts = [
    counts.created > 0 ? `${showWhole(counts.created, display)} new` : null,
    counts.updated > 0 ? `${showWhole(counts.updated, display)} updated` : null,
    counts.unchanged > 0 ? `${showWhole(counts.unchanged, display)} unchanged` : null,
    counts.problem > 0 ? `${showWhole(counts.problem, display)} left out` : null,
  ]
  return parts.filter(Boolean).join(', ') || 'no rows'
}
