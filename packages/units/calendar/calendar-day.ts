import { DAYS_PER_YEAR, daysInMonth, type IsoDay, isoDay, parseDay } from './day-number.ts'

/** The ISO day of a year, month (1–12) and day of the month; null where the calendar has no such day or the year has not four digits. */
export function isoDayOf(year: number, month: number, date: number): IsoDay | null {
  if (!Number.isInteger(year) || year < 1000 || year > 9999) return null
  if (!Number.isInteger(month) || month < 1 || month > 12) return null
  if (!Number.isInteger(date) || date < 1 || date > daysInMonth(year, month)) return null
  return `${year}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`
}

/** True for a string that is a day of the calendar. */
export const isIsoDay = (text: string): boolean => parseDay(text) !== null

/** Days since 1970-01-01. Throws a RangeError for what is no day: a wrong day must not make a wrong plan or picture. */
export function dayNumber(day: IsoDay): number {
  const number = parseDay(day)
  if (number === null) throw new RangeError(`"${day}" is not a day written as YYYY-MM-DD.`)
  return number
}

/** The day a whole number of days later, or earlier where negative. */
export const addDays = (day: IsoDay, days: number): IsoDay => isoDay(dayNumber(day) + days)

/** Days from one day to another, negative where the second comes first. */
export const daysBetween = (from: IsoDay, to: IsoDay): number => dayNumber(to) - dayNumber(from)

/** Years from one day to another, by the mean length of a year. */
export const yearsBetween = (from: IsoDay, to: IsoDay): number => daysBetween(from, to) / DAYS_PER_YEAR

/** Years from the middle of the days between which something happened to `today`; never below zero, null where neither end is known. */
export function yearsSince(earliest: IsoDay | null, latest: IsoDay | null, today: IsoDay): number | null {
  const [from, until] = [earliest ?? latest, latest ?? earliest]
  return from === null || until === null ? null : Math.max(0, (yearsBetween(from, today) + yearsBetween(until, today)) / 2)
}

/** The weekday of a day, from 1, Monday, to 7, Sunday (ISO 8601). The first day of 1970 was a Thursday. */
export const weekdayOf = (day: IsoDay): number => ((((dayNumber(day) + 3) % 7) + 7) % 7) + 1
