import type { AgreementEnd, TurnState } from '@almanac/records/agreement'
import type { JobState } from '@almanac/records/job-state'
import { dayNumber } from '@almanac/units/calendar/calendar-day'
import { addMonths, isoDay, monthStart } from '@almanac/units/calendar/day-number'
import { daysOfRule, everyOf } from './turn-rule.ts'

/** What decides when an agreement's turns are due. */
export type TurnFacts = {
  rule: string
  firstDay: string
  /** Turns before this day were never asked for here: the agreement was written down later. */
  countsFrom: string
  /** The last day agreed; null while nothing ends it. */
  untilDay: string | null
  endedDay: string | null
  endWhy: AgreementEnd | null
}

/** What is kept of a turn. */
export type KeptTurn = { dueDay: string; state: TurnState; jobState: JobState | null }

/** The last day on which a turn can be due; null for one entered by mistake, which never was. */
export function lastDayOf({ untilDay, endedDay, endWhy }: Pick<TurnFacts, 'untilDay' | 'endedDay' | 'endWhy'>): string | null {
  if (endWhy === 'mistake') return null
  const ends = [untilDay, endedDay].filter((day): day is string => day !== null).sort()
  return ends[0] ?? '9899-12-31'
}

/** The days up to `until` on which an agreement's turns are due. */
export function turnDays(facts: TurnFacts, until: string): string[] {
  const last = lastDayOf(facts)
  if (last === null) return []
  return daysOfRule(facts.rule, facts.firstDay, facts.countsFrom, last < until ? last : until)
}

/**
 * How a turn stands: done, skipped, `under-way` while its job is open, else `open`. Of a job that was called off or closed without being done the turn is open
 * again: nothing was forgotten by that.
 */
export type TurnStanding = 'open' | 'under-way' | 'done' | 'skipped'
export function standingOf(kept: KeptTurn | undefined): TurnStanding {
  if (!kept) return 'open'
  if (kept.state !== 'proposed') return kept.state
  return kept.jobState === null || kept.jobState === 'closed' || kept.jobState === 'called-off' ? 'open' : 'under-way'
}

/** Turns this far apart may be done a month sooner or later; nearer ones, and salt, which runs out, in their own month. Common practice, no source. */
const APART_MONTHS = 6

/** How many months sooner and later than its own a turn may be done. */
export function leewayOf(kind: string, rule: string): number {
  const { count, unit } = everyOf(rule)
  const months = unit === 'year' ? count * 12 : unit === 'month' ? count : (count * 12) / 52
  return kind !== 'salt' && months >= APART_MONTHS ? 1 : 0
}

/** The month, 'YYYY-MM', so many months after that of a day. */
export const monthOf = (day: string, later = 0): string => isoDay(monthStart(dayNumber(day), later)).slice(0, 7)

/** The last day of the month, 'YYYY-MM'. */
export const lastOfMonth = (month: string): string => isoDay(addMonths(dayNumber(`${month}-01`), 1) - 1)

/** Whether a turn that is not done is late: the last month in which it may be done is over. */
export const isLate = (dueDay: string, leeway: number, today: string): boolean => monthOf(dueDay, leeway) < monthOf(today)
