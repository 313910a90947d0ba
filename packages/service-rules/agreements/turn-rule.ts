import type { TurnUnit } from '@almanac/records/agreement'
import { dayNumber } from '@almanac/units/calendar/calendar-day'
import { type CivilDate, civilDate } from '@almanac/units/calendar/day-number'
import { RRuleTemporal } from 'rrule-temporal'

/** So often: every six weeks, every year. */
export type Every = { count: number; unit: TurnUnit }

const FREQUENCY: Readonly<Record<TurnUnit, string>> = { week: 'WEEKLY', month: 'MONTHLY', year: 'YEARLY' }

/** The 28th to the day itself, of which the last there is counts: RFC 5545 leaves out a month without the day, and a customer would be left out with it. */
const lastUpTo = ({ date }: CivilDate) => `BYMONTHDAY=${Array.from({ length: date - 27 }, (_, later) => 28 + later).join(',')};BYSETPOS=-1`

/** The rule of RFC 5545 for turns that begin on a day: of the 29th, 30th and 31st each month has its turn, on its last day where it is shorter. */
export function ruleOf({ count, unit }: Every, firstDay: string): string {
  const first = civilDate(dayNumber(firstDay))
  const rule = `FREQ=${FREQUENCY[unit]}${count === 1 ? '' : `;INTERVAL=${count}`}`
  if (unit === 'week' || first.date <= 28) return rule
  if (unit === 'month') return `${rule};${lastUpTo(first)}`
  return first.month === 2 ? `${rule};BYMONTH=2;${lastUpTo(first)}` : rule
}

/** How often a rule of ours comes, to be said in words. */
export function everyOf(rule: string): Every {
  const part = (name: string) => new RegExp(`(?:^|;)${name}=([^;]+)`).exec(rule)?.[1]
  const unit = (Object.keys(FREQUENCY) as TurnUnit[]).find((one) => FREQUENCY[one] === part('FREQ')) ?? 'year'
  return { count: Number(part('INTERVAL') ?? 1), unit }
}

const stamp = (day: string) => `${day.replaceAll('-', '')}T000000Z`
/** Midnight in UTC: days have no zone, and no clock changes there. */
const midnight = (day: string) => new Date(`${day}T00:00:00Z`)

/** The days from `from` to `until`, both counted, on which a rule of RFC 5545 that begins on a day comes. */
export function daysOfRule(rule: string, firstDay: string, from: string, until: string): string[] {
  const start = from > firstDay ? from : firstDay
  if (until < start) return []
  const recurrence = new RRuleTemporal({ rruleString: `DTSTART:${stamp(firstDay)}\nRRULE:${rule}`, strict: true })
  return recurrence.between(midnight(start), midnight(until), true).map((each) => each.toString().slice(0, 10))
}
