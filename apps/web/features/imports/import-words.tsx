import type { ImportBatchRow, ImportCounts } from '@almanac/contract/imports'
import { StatusWord } from '@almanac/ui/status-word'

export const count = (value: number) => value.toLocaleString('en-US')
export const plural = (value: number, one: string, many: string) => `${count(value)} ${value === 1 ? one : many}`

const STATES = {
  draft: { shape: 'dashed', tone: 'soft', word: 'draft, nothing written' },
  queued: { shape: 'hollow', tone: 'water', word: 'waiting' },
  applying: { shape: 'half', tone: 'water', word: 'being written' },
  applied: { shape: 'tick', tone: 'done', word: 'brought in' },
  undone: { shape: 'cross', tone: 'soft', word: 'undone' },
  failed: { shape: 'triangle', tone: 'danger', word: 'broke off, nothing written' },
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
export function outcomeWords({ counts, gone }: Pick<ImportBatchRow, 'counts' | 'gone'>): string {
  if (gone) return `${count(gone.rows)} no longer on record`
  return counts ? countWords(counts) : 'not checked yet'
}

/** Rows by what becomes of them, in one line. */
export function countWords(counts: ImportCounts): string {
  const parts = [
    counts.created > 0 ? `${count(counts.created)} new` : null,
    counts.updated > 0 ? `${count(counts.updated)} updated` : null,
    counts.unchanged > 0 ? `${count(counts.unchanged)} unchanged` : null,
    counts.problem > 0 ? `${count(counts.problem)} to mend` : null,
  ]
  return parts.filter(Boolean).join(', ') || 'no rows'
}
