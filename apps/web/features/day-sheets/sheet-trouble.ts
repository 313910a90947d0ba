import type { DaySheet, SheetVisit } from '@almanac/contract/day-sheets'
import { type ClockDisplay, formatDuration } from '@almanac/units/format-clock'
import type { NumberDisplay } from '@almanac/units/format-number'
import { nowWords } from './now-words.ts'
import { type SheetLine, sheetLines } from './sheet-lines.ts'
import { expectedOf } from './use-expected.ts'

/** Something wrong with a sheet, in a few words. */
export type Trouble = { key: string; words: string }

/** That a promised visit begins outside what was promised: its customer is on the list of whom to call. */
export const isPromiseLost = ({ state, startsAt, arriveFrom, arriveUntil }: SheetVisit): boolean =>
  state !== 'offered' && arriveFrom !== null && arriveUntil !== null && (startsAt < arriveFrom || startsAt > arriveUntil)

/** What there is no time for of a drive. */
export function shortWords({ what, short }: Pick<Extract<SheetLine, { kind: 'drive' }>, 'what' | 'short'>, display: NumberDisplay): string {
  const minutes = formatDuration(short, display)
  if (what === 'out') return `leaves ${minutes} before the day begins`
  return what === 'home' ? `back ${minutes} after the day ends` : `${minutes} short`
}

/** What of a sheet's times does not fit: visits outside its hours, and drives that there is no time for. */
export function hoursTrouble(sheet: DaySheet, display: ClockDisplay): Trouble[] {
  return sheetLines(sheet, []).flatMap((line): Trouble[] => {
    if (line.kind === 'visit') return line.outside ? [{ key: line.key, words: `${line.visit.siteLabel} outside the crew’s hours` }] : []
    if (line.kind === 'break') return line.fits ? [] : [{ key: line.key, words: 'no time for the break' }]
    if (line.kind !== 'drive' || line.short === 0) return []
    const words = shortWords(line, display)
    return [{ key: line.key, words: line.what === 'between' ? `${words} before ${line.to}` : words }]
  })
}

/** How a crew's day goes, seen from now: what runs over, and who comes later by it. */
function nowTrouble(sheet: DaySheet, display: ClockDisplay, nowMs: number): Trouble[] {
  const expected = expectedOf(sheet, nowMs)
  return sheet.visits.flatMap((visit) => {
    const one = expected.get(visit.id)
    const isLate = one && (one.over || one.missed || one.lateMinutes > 0)
    return isLate ? [{ key: `${visit.id} now`, words: `${visit.siteLabel}: ${nowWords(visit, one, display) ?? 'late'}` }] : []
  })
}

/** All that is wrong with a sheet, what goes wrong now first: a folded sheet hides none of it. Its load is told beside it. `nowMs`: where the day is today's. */
export function sheetTrouble(sheet: DaySheet, display: ClockDisplay, nowMs: number | null): Trouble[] {
  return [
    ...(nowMs === null ? [] : nowTrouble(sheet, display, nowMs)),
    ...sheet.warnings.map((words) => ({ key: words, words })),
    ...hoursTrouble(sheet, display),
    ...sheet.visits.flatMap((visit) => [
      ...(isPromiseLost(visit) ? [{ key: `${visit.id} promise`, words: `${visit.siteLabel}: promise not kept` }] : []),
      ...visit.warnings.map((words) => ({ key: `${visit.id} ${words}`, words: `${visit.siteLabel}: ${words}` })),
    ]),
  ]
}
