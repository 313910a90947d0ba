import { type JobKind, jobKindWords } from '@almanac/records/job-kind'
import { type DayDisplay, formatDay, formatDays } from '@almanac/units/format-day'
import { formatPercent, type NumberDisplay } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'

type JobWords = Words<'job'>

/** How a job is said. */
export type JobSpeaking = { words: JobWords; display: DayDisplay & NumberDisplay }

/** "one person", "two people". */
export const peopleWords = (count: number, words: JobWords) => words('people', { count })

/** When a job is due, as seen on a day: "overdue since Nov 4, 2026", "due by …"; null without dates. */
export function dueWords(
  dueEarliest: string | null,
  dueLatest: string | null,
  today: string,
  { words, display }: JobSpeaking,
): string | null {
  const on = (day: string) => ({ day: formatDay(day, display) })
  if (dueLatest && dueLatest < today) return words('overdue', on(dueLatest))
  if (dueEarliest && dueEarliest > today) return words('notBefore', on(dueEarliest))
  if (dueLatest) return dueLatest === today ? words('dueToday') : words('dueBy', on(dueLatest))
  return dueEarliest ? words('dueSince', on(dueEarliest)) : null
}

/** From when to when a job should be done: "Feb 3, 2027 – May 9, 2031", or as far as it is known. */
export function windowWords(dueEarliest: string | null, dueLatest: string | null, { words, display }: JobSpeaking): string | null {
  if (dueEarliest && dueLatest) return formatDays(dueEarliest, dueLatest, display)
  if (dueLatest) return words('by', { day: formatDay(dueLatest, display) })
  return dueEarliest ? words('from', { day: formatDay(dueEarliest, display) }) : null
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
export function weekRiskWords(kind: JobKind, chance3Months: number | null, { words, display }: JobSpeaking): string | null {
  const risk = weekRisk(kind, chance3Months, display)
  return risk ? words('weekRisk', { risk }) : null
}

/** "Rebed · Copper Street 12". */
export const jobName = ({ kind, siteLabel }: { kind: JobKind; siteLabel: string }) => `${jobKindWords[kind]} · ${siteLabel}`
