import type { SheetVisit } from '@almanac/contract/day-sheets'
import type { Expected } from '@almanac/service-rules/day-sheets/day-now'
import { type ClockDisplay, formatClock, formatDuration } from '@almanac/units/format-clock'

/** How a visit of today goes, in a few words; null where it goes as planned. */
export function nowWords(
  visit: SheetVisit,
  { startMs, endMs, lateMinutes, over, missed, silent }: Expected,
  display: ClockDisplay,
): string | null {
  if (visit.state === 'under-way') {
    const until = visit.runningUntil ? `, until ${formatClock(visit.runningUntil, display)}` : ''
    const since = visit.startedAt ? `since ${formatClock(visit.startedAt, display)}` : 'under way'
    if (!over) return `${since}${until}`
    const planned = visit.runningUntil ? Date.parse(visit.runningUntil) : startMs + Date.parse(visit.endsAt) - Date.parse(visit.startsAt)
    return `${since}, ${formatDuration(Math.max(1, Math.round((endMs - planned) / 60_000)), display)} over`
  }
  if (silent) return 'no word from the crew'
  if (visit.state !== 'booked' || (lateMinutes === 0 && !missed)) return null
  return `about ${formatClock(startMs, display)}, ${formatDuration(Math.max(1, lateMinutes), display)} late`
}
