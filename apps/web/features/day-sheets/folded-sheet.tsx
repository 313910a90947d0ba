'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import { StatusWord } from '@almanac/ui/status-word'
import { formatClock, formatDuration } from '@almanac/units/format-clock'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { sheetMinutes } from './sheet-lines.ts'
import { loadWords } from './sheet-load.ts'
import { sheetTrouble } from './sheet-trouble.ts'
import type { Drag } from './use-drag.ts'

type FoldedSheetProps = { sheet: DaySheet; nowMs: number | null; drop: ReturnType<Drag['target']>; onOpen: () => void }

/** One crew's day in a line: who, what is booked and free, what the vehicle carries, where they end, what is wrong. Pressed, it opens. */
export function FoldedSheet({ sheet, nowMs, drop, onOpen }: FoldedSheetProps) {
  const { me } = useSession()
  const display = me.company
  const { booked, free } = sheetMinutes(sheet)
  const load = loadWords(sheet, useRebedFirm())
  const last = sheet.visits.at(-1)
  const trouble = sheetTrouble(sheet, display, nowMs)
  return (
    <button
      type="button"
      {...drop}
      data-line
      aria-expanded={false}
      onClick={onOpen}
      className="grid min-h-control print:hidden w-full grid-cols-1 gap-x-6 gap-y-0.5 border-b border-line py-2.5 text-left hover:bg-wash data-drop:bg-wash data-drop:outline data-drop:outline-dashed data-drop:outline-water sm:grid-cols-[minmax(10rem,15rem)_1fr]"
    >
      <strong className="font-semibold">
        {sheet.name}
        {sheet.members.length === 1 ? <span className="font-normal text-soft"> (alone)</span> : null}
      </strong>
      <span className="flex flex-wrap gap-x-6 text-soft">
        <span>{sheet.visits.length === 0 ? 'nothing booked' : `${formatDuration(booked, display)} booked`}</span>
        <span>{free === 0 ? 'full' : `${formatDuration(free, display)} free`}</span>
        <span className={load.over ? 'text-danger' : undefined}>{load.over ? `${load.words}: over capacity` : load.words}</span>
        {sheet.members.length === 1 ? <span>no rebeds: needs two</span> : null}
        {last ? (
          <span>
            ends {last.siteLabel} {formatClock(last.endsAt, display)}
          </span>
        ) : null}
        {trouble.length > 0 ? (
          <span className="basis-full">
            <StatusWord shape="triangle" tone="danger">
              {trouble.length === 1 ? trouble[0]?.words : `${trouble.length} problems: ${trouble[0]?.words}`}
            </StatusWord>
          </span>
        ) : null}
      </span>
    </button>
  )
}
