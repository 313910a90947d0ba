import { weekdayOf } from '@almanac/units/calendar/calendar-day'
import { minuteOfClock } from '@almanac/units/calendar/zone-clock'
import { formatClockTime, formatClockTimes } from '@almanac/units/format-clock'
import { type DayDisplay, formatWeekday } from '@almanac/units/format-day'

/** When a site takes visits: weekdays from 1, Monday, to 7, none for any; clock times 'HH:MM' between which a visit must begin and end, null for no bound. */
export type SiteHours = { weekdays: readonly number[]; from: string | null; until: string | null }

const END_OF_DAY = 1440

export const takesAnyTime = ({ weekdays, from, until }: SiteHours) => weekdays.length === 0 && from === null && until === null

/** The minutes since midnight between which a visit must lie on a day; null where the site takes none on that weekday. */
export function siteHoursOn({ weekdays, from, until }: SiteHours, day: string): { from: number; until: number } | null {
  if (weekdays.length > 0 && !weekdays.includes(weekdayOf(day))) return null
  return { from: from === null ? 0 : minuteOfClock(from), until: until === null ? END_OF_DAY : minuteOfClock(until) }
}

/** How a time with one bound is said where no reader's language is known: a dispatcher's. */
const ENGLISH: BoundWords = (bound, { time }) => (bound === 'fromTime' ? `from ${time}` : `until ${time}`)

type BoundWords = (bound: 'fromTime' | 'untilTime', values: { time: string }) => string

/** "Mon, Tue, 2:30 – 6:00 PM"; null where any time will do. */
export function siteHoursWords(hours: SiteHours, display: DayDisplay, words: BoundWords = ENGLISH): string | null {
  if (takesAnyTime(hours)) return null
  const { weekdays, from, until } = hours
  const days = [...weekdays].sort().map((weekday) => formatWeekday(weekday, display, true))
  const times =
    from && until
      ? formatClockTimes(from, until, display)
      : from
        ? words('fromTime', { time: formatClockTime(from, display) })
        : until
          ? words('untilTime', { time: formatClockTime(until, display) })
          : null
  return [...days, times].filter(Boolean).join(', ')
}

/** Why a visit from one minute of a day to another does not suit the site, in a sentence; null when it does. */
export function outsideSiteHours(
  hours: SiteHours,
  day: string,
  startMinute: number,
  endMinute: number,
  display: DayDisplay,
): string | null {
  const on = siteHoursOn(hours, day)
  return on && startMinute >= on.from && endMinute <= on.until ? null : `Visiting hours are ${siteHoursWords(hours, display)}.`
}
