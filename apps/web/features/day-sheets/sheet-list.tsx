'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import type { KeyboardEvent } from 'react'
import { useBooking } from '@/client/use-booking'
import { FoldedSheet } from './folded-sheet.tsx'
import { OpenSheet, type Travel } from './open-sheet.tsx'
import { useDrag } from './use-drag.ts'
import { useLineKeys } from './use-line-keys.ts'
import { useOpenOnPaper } from './use-open-on-paper.ts'

export type SheetListProps = {
  sheets: readonly DaySheet[]
  openId: string | null
  travel: Travel
  /** The clock where the day is today's; else null. */
  nowMs: number | null
  onOpen: (id: string | null) => void
  onChange: () => void
  /** Goes so many days on or back; 0 is today. */
  onDay: (days: number) => void
}

const DAYS: Record<string, number> = { ArrowLeft: -1, ArrowRight: 1, t: 0 }

/** The day's sheets, one open and the others folded, with the keys that walk them. */
export function SheetList({ sheets, openId, travel, nowMs, onOpen, onChange, onDay }: SheetListProps) {
  const desk = useBooking()
  useOpenOnPaper()
  const drag = useDrag(desk)
  const keys = useLineKeys<HTMLDivElement>()
  const onKeyDown = (event: KeyboardEvent) => {
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey && !(event.target instanceof HTMLInputElement)
    const days = plain ? DAYS[event.key] : undefined
    if (days !== undefined) onDay(days)
    else keys.onKeyDown(event)
  }
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys only move the focus between buttons that work without them */}
      <div ref={keys.ref} onKeyDown={onKeyDown} onFocus={keys.onFocus} onBlur={keys.onBlur} className="border-t border-line">
        {sheets.map((sheet) =>
          sheet.id === openId ? (
            <OpenSheet
              key={sheet.id}
              sheet={sheet}
              others={sheets.filter((one) => one.id !== sheet.id)}
              travel={travel}
              nowMs={nowMs}
              desk={desk}
              drag={drag}
              onFold={() => onOpen(null)}
              onChange={onChange}
            />
          ) : (
            <FoldedSheet
              key={sheet.id}
              sheet={sheet}
              nowMs={nowMs}
              drop={drag.target(sheet, Date.parse(sheet.startsAt))}
              onOpen={() => onOpen(sheet.id)}
            />
          ),
        )}
      </div>
      <p className="mt-3 text-small text-soft max-sm:hidden print:hidden">
        Keys in the sheets: <kbd>↑</kbd> <kbd>↓</kbd> from line to line, <kbd>Enter</kbd> opens a sheet or places a job, <kbd>←</kbd>{' '}
        <kbd>→</kbd> another day, <kbd>T</kbd> today. By mouse, drag a visit or a faint line onto a free stretch or another crew's line.
      </p>
    </>
  )
}
