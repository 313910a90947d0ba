import { addDays, dayNumber } from './calendar/calendar-day.ts'
import type { IsoDay } from './calendar/day-number.ts'
import { dateFormat, evenSpaces } from './date-format.ts'
import type { Display } from './display.ts'

/** What writing a day takes of the company's display. A day has no zone: it is the company's already. */
export type DayDisplay = Pick<Display, 'locale'>

const DAY = { year: 'numeric', month: 'short', day: 'numeric' } as const
const MONTH = { year: 'numeric', month: 'short' } as const
const LONG_MONTH = { year: 'numeric', month: 'long' } as const

/** A day at noon in UTC, where the platform's formatter is held to. Months 'YYYY-MM' stand for their first day. */
const noon = (day: IsoDay): Date => new Date((dayNumber(day.length === 7 ? `${day}-01` : day) + 0.5) * 86_400_000)

const write = (day: IsoDay, { locale }: DayDisplay, options: Intl.DateTimeFormatOptions): string =>
  evenSpaces(dateFormat(locale, { ...options, timeZone: 'UTC' }).format(noon(day)))

const writeRange = (from: IsoDay, until: IsoDay, { locale }: DayDisplay, options: Intl.DateTimeFormatOptions): string =>
  evenSpaces(dateFormat(locale, { ...options, timeZone: 'UTC' }).formatRange(noon(from), noon(until)))

/** A day with its year: "Dec 3, 2026", "3 Dec 2026". Throws, as all of these, for what is no day. */
export const formatDay = (day: IsoDay, display: DayDisplay): string => write(day, display, DAY)

/** Days from one to another: "Dec 3 – 9, 2026", "28 Dec 2026 – 3 Jan 2027"; one day alone where both are the same. */
export const formatDays = (from: IsoDay, until: IsoDay, display: DayDisplay): string => writeRange(from, until, display, DAY)

/** A day near enough that its year goes without saying, with its weekday: "Thu, Dec 3", "Thu 3 Dec". */
export const formatNearDay = (day: IsoDay, display: DayDisplay): string =>
  write(day, display, { weekday: 'short', month: 'short', day: 'numeric' })

/** A day at the head of a page or of a letter: "Thursday, December 3", with the year when it is not the one of `today`. */
export const formatDayTitle = (day: IsoDay, today: IsoDay, display: DayDisplay): string =>
  write(day, display, {
    ...{ weekday: 'long', month: 'long', day: 'numeric' },
    ...(day.slice(0, 4) === today.slice(0, 4) ? {} : { year: 'numeric' }),
  })

/** A month, of 'YYYY-MM' or a day in it: "Dec 2026". */
export const formatMonth = (month: IsoDay, display: DayDisplay): string => write(month, display, MONTH)

/** "December 2026". */
export const formatLongMonth = (month: IsoDay, display: DayDisplay): string => write(month, display, LONG_MONTH)

/** Months from one to another: "Mar – Jun 2012"; one month alone where both are the same. */
export const formatMonths = (from: IsoDay, until: IsoDay, display: DayDisplay): string => writeRange(from, until, display, MONTH)

/** A month under an axis: "Dec", or "D" where there is no room. */
export const monthLabel = (month: IsoDay, narrow: boolean, display: DayDisplay): string =>
  write(month, display, { month: narrow ? 'narrow' : 'short' })

/** The name of a weekday from 1, Monday, to 7: "Monday", or "Mon" where `short`. The fifth of January 1970 was a Monday. */
export const formatWeekday = (weekday: number, display: DayDisplay, short = false): string =>
  write(addDays('1970-01-05', weekday - 1), display, { weekday: short ? 'short' : 'long' })
