import { dayIn, instantMs, type Moment, minuteOfClock } from './calendar/zone-clock.ts'
import { dateFormat, evenSpaces } from './date-format.ts'
import type { Display } from './display.ts'
import { type NumberDisplay, showNumber } from './format-number.ts'

/** What writing an instant takes of the company's display. */
export type ClockDisplay = Pick<Display, 'locale' | 'timeZone'>

const CLOCK = { timeStyle: 'short' } as const

const format = ({ locale, timeZone }: ClockDisplay, options: Intl.DateTimeFormatOptions) => dateFormat(locale, { ...options, timeZone })

/** What the clock shows at an instant: "8:10 AM", "08:10". */
export const formatClock = (instant: Moment, display: ClockDisplay): string => evenSpaces(format(display, CLOCK).format(instantMs(instant)))

/** From one instant to another of the same day: "8:10 – 10:00 AM"; each with its own half of the day where they lie on two. */
export function formatClocks(from: Moment, until: Moment, display: ClockDisplay): string {
  const oneDay = dayIn(display.timeZone, from) === dayIn(display.timeZone, until)
  if (!oneDay || instantMs(until) <= instantMs(from)) return `${formatClock(from, display)} – ${formatClock(until, display)}`
  return evenSpaces(format(display, CLOCK).formatRange(instantMs(from), instantMs(until)))
}

/** A clock time 'HH:MM' as the locale writes it: "8:10 AM". */
export const formatClockTime = (clock: string, display: Pick<Display, 'locale'>): string => formatMinute(minuteOfClock(clock), display)

/** Minutes since midnight as the locale writes a clock: "8:10 AM"; past midnight they go on with the next day. */
export const formatMinute = (minuteOfDay: number, { locale }: Pick<Display, 'locale'>): string =>
  formatClock(Math.round(minuteOfDay) * 60_000, { locale, timeZone: 'UTC' })

/** From one clock time 'HH:MM' to another: "8:10 – 10:00 AM". */
export const formatClockTimes = (from: string, until: string, { locale }: Pick<Display, 'locale'>): string =>
  formatClocks(minuteOfClock(from) * 60_000, minuteOfClock(until) * 60_000, { locale, timeZone: 'UTC' })

/** Day and clock of an instant: "Dec 3, 2026, 8:10 AM". */
export const formatInstant = (instant: Moment, display: ClockDisplay): string =>
  evenSpaces(format(display, { dateStyle: 'medium', timeStyle: 'short' }).format(instantMs(instant)))

/** How long something takes, in whole minutes: "1 h 35 min", "45 min", "3 h". h and min are the signs of the SI (BIPM brochure, table 8) in every language here. */
export function formatDuration(minutes: number, display: NumberDisplay): string {
  const whole = Math.round(Math.abs(minutes))
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  const sign = minutes < 0 && whole > 0 ? '-' : ''
  const parts = [
    hours > 0 ? `${showNumber(hours, 0, display)} h` : '',
    rest > 0 || hours === 0 ? `${showNumber(rest, 0, display)} min` : '',
  ]
  return sign + parts.filter(Boolean).join(' ')
}
