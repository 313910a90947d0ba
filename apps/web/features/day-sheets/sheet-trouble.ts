import type { DaySheet, SheetVisit } from '@almanac/contract/day-sheets'
import { type ClockDisplay, formatDuration } from '@almanac/units/format-clock'
import type { NumberDisplay } from '@almanac/units/format-number'
import { type SheetLine, sheetLines } from './sheet-lines.ts'

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
    if (line.kind !== 'drive' || line.short === 0) return []
    const words = shortWords(line, display)
    return [{ key: line.key, words: line.what === 'between' ? `${words} before ${line.to}` : words }]
  })
}

/** All that is wrong with a sheet, the crew's own first: a folded sheet hides none of it. Its load is told beside it. */
export function sheetTrouble(sheet: DaySheet, display: ClockDisplay): Trouble[] {
  return [
    ...sheet.warnings.map((words) => ({ key: words, words })),
    ...hoursTrouble(sheet, display),
    ...sheet.visits.flatMap((visit) => [
      ...(isPromiseLost(visit) ? [{ key: `${visit.id} promise`, words: `${visit.siteLabel}: promise not kept` }] : []),
      ...visit.warnings.map((words) => ({ key: `${visit.id} ${words}`, words: `${visit.siteLabel}: ${words}` })),
    ]),
  ]
}
