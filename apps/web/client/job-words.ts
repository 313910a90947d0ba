import type { JobKind } from '@almanac/records/job-kind'
import { formatPercent, type NumberDisplay } from '@almanac/units/format-number'
import { dayWords } from './clock-words.ts'

/** "one person", "2 people". */
export const peopleWords = (count: number) => (count === 1 ? 'one person' : count === 2 ? 'two people' : `${count} people`)

/** When a job is due, as seen on a day: "overdue since 4 Nov 2026", "due by …", "due from …"; null without dates. */
export function dueWords(dueEarliest: string | null, dueLatest: string | null, day: string): string | null {
  if (dueLatest && dueLatest < day) return `overdue since ${dayWords(dueLatest)}`
  if (dueEarliest && dueEarliest > day) return `not due before ${dayWords(dueEarliest)}`
  if (dueLatest) return dueLatest === day ? 'due today' : `due by ${dayWords(dueLatest)}`
  return dueEarliest ? `due since ${dayWords(dueEarliest)}` : null
}

/** From when to when a job should be done: "3 Feb 2027 to 9 May 2031", or as far as it is known. */
export function windowWords(dueEarliest: string | null, dueLatest: string | null): string | null {
  if (dueEarliest && dueLatest)
    return dueEarliest === dueLatest ? dayWords(dueEarliest) : `${dayWords(dueEarliest)} to ${dayWords(dueLatest)}`
  if (dueLatest) return `by ${dayWords(dueLatest)}`
  return dueEarliest ? `from ${dayWords(dueEarliest)}` : null
}

/**
 * What another week of waiting adds to the chance that the bed fails first, as "0.6%": a thirteenth of the chance of the next three months.
 * Only a rebed lowers that chance, so other kinds have none to tell.
 */
export function weekRisk(kind: JobKind, chance3Months: number | null, display: NumberDisplay): string | null {
  if (kind !== 'rebed' || chance3Months === null) return null
  const share = chance3Months / 13
  return share < 0.0005 ? null : formatPercent(share, display, share < 0.01 ? 1 : 0)
}

/** "each week of waiting: 0.6% more risk". */
export function weekRiskWords(kind: JobKind, chance3Months: number | null, display: NumberDisplay): string | null {
  const risk = weekRisk(kind, chance3Months, display)
  return risk ? `each week of waiting: ${risk} more risk` : null
}
