import { daysBetween } from '@almanac/units/calendar/calendar-day'

/** What runs out: how it is called, the day it is gone, and the day to order by. */
export type ShelfLine = { key: string; words: string; outOn: string; orderBy: string }

/** How long the shelf lasts: a bar from today to the day each thing runs out, with a stroke where it must be ordered. */
export function ShelfLines({ lines, today, until }: { lines: readonly ShelfLine[]; today: string; until: string }) {
  const reach = Math.max(1, daysBetween(today, until))
  const share = (day: string) => `${Math.min(100, Math.max(0, (100 * daysBetween(today, day)) / reach))}%`
  return (
    <ul className="flex flex-col gap-1.5 text-small">
      {lines.map((line) => (
        <li key={line.key} className="grid items-center gap-x-4 sm:grid-cols-[minmax(8rem,1fr)_2fr]">
          <svg aria-hidden="true" width="100%" height="14" className="block overflow-visible">
            <line x1="0" x2={share(line.outOn)} y1="7" y2="7" className="stroke-bead" strokeWidth="4" />
            <line x1={share(line.orderBy)} x2={share(line.orderBy)} y1="1" y2="13" className="stroke-ink" strokeWidth="2" />
          </svg>
          <span>{line.words}</span>
        </li>
      ))}
    </ul>
  )
}
