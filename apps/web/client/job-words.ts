import { type JobKind, jobKindWords } from '@almanac/records/job-kind'
import { type DayDisplay, formatDay, formatDays } from '@almanac/units/format-day'
import { formatPercent, type NumberDisplay } from '@almanac/units/format-number'

/** "one person", "2 people". */
export const peopleWords = (count: number) => (count === 1 ? 'one person' : count === 2 ? 'two people' : `${count} people`)

/** When a job is due, as seen on a day: "overdue since Nov 4, 2026", "due by …", "due from …"; null without dates. */
export function dueWords(dueEarliest: string | null, dueLatest: string | null, day: string, display: DayDisplay): string | null {
  if (dueLatest && dueLatest < day) return `overdue since ${formatDay(dueLatest, display)}`
  if (dueEarliest && dueEarliest > day) return `not due before ${formatDay(dueEarliest, display)}`
  if (dueLatest) return dueLatest === day ? 'due today' : `due by ${formatDay(dueLatest, display)}`
  return dueEarliest ? `due since ${formatDay(dueEarliest, display)}` : null
}

/** From when to when a job should be done: "Feb 3, 2027 – May 9, 2031", or as far as it is known. */
export function windowWords(dueEarliest: string | null, dueLatest: string | null, display: DayDisplay): string | null {
  if (dueEarliest && dueLatest) return formatDays(dueEarliest, dueLatest, display)
  if (dueLatest) return `by ${formatDay(dueLatest, display)}`
  return dueEarliest ? `from ${formatDay(dueEarliest, display)}` : null
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

/** "Rebed · Copper Street 12". */
export const jobName = ({ kind, siteLabel }: { kind: JobKind; siteLabel: string }) => `${jobKindWords[kind]} · ${siteLabel}`
