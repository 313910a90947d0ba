import { type DayDisplay, formatDay, formatMonth } from '@almanac/units/format-day'
import type { ReactNode } from 'react'
import { useDisplay } from './display.tsx'
import { Shape, type ShapeName } from './shape.tsx'

/** What happened: each kind has its own shape. */
export type HistoryKind = 'bed' | 'visit' | 'test' | 'water' | 'message' | 'note'

const looks: Record<HistoryKind, { shape: ShapeName; text: string }> = {
  bed: { shape: 'square', text: 'text-bead' },
  visit: { shape: 'dot', text: 'text-ink' },
  test: { shape: 'triangle', text: 'text-water' },
  water: { shape: 'diamond', text: 'text-water' },
  message: { shape: 'hollow', text: 'text-soft' },
  note: { shape: 'dashed', text: 'text-soft' },
}

export type HistoryEntry = {
  key: string
  /** The kind in a word: "water test". */
  kindWord: string
  /** 'YYYY-MM-DD', 'YYYY-MM', 'YYYY', or with `dayWords` anything one can say. */
  day: string
  /** Instead of the formatted day, where it is not exact: "before 2011". */
  dayWords?: string
  kind: HistoryKind
  title: ReactNode
  children?: ReactNode
}

function when(entry: HistoryEntry, display: DayDisplay): string {
  if (entry.dayWords) return entry.dayWords
  if (/^\d{4}$/.test(entry.day)) return entry.day
  return entry.day.length > 7 ? formatDay(entry.day, display) : formatMonth(entry.day, display)
}

/** The history of a site, newest first as given: dated entries on one line, their kind told by shape and word. */
export function HistoryLine({ entries, label }: { entries: readonly HistoryEntry[]; label?: string }) {
  const display = useDisplay()
  return (
    <ol aria-label={label} className="flex flex-col">
      {entries.map((entry, i) => {
        const look = looks[entry.kind]
        return (
          <li key={entry.key} className="grid grid-cols-[6.5rem_1.25rem_1fr] gap-x-3">
            <time className="pt-0.5 pb-4 text-right text-soft">{when(entry, display)}</time>
            <span aria-hidden="true" className={`relative flex flex-col items-center pt-2 ${look.text}`}>
              <Shape name={look.shape} size={13} />
              {i < entries.length - 1 ? <span className="absolute top-6 -bottom-1.5 w-px bg-line" /> : null}
            </span>
            <div className="min-w-0 pt-0.5 pb-4">
              <span className="font-medium">{entry.title}</span>
              <span className="ml-2 text-small whitespace-nowrap text-soft">{entry.kindWord}</span>
              {entry.children ? <div className="text-soft">{entry.children}</div> : null}
            </div>
          </li>
        )
      })}
    </ol>
  )
}
