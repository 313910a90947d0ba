/** A calendar day as 'YYYY-MM-DD' in the company's zone. Such strings compare as the days do. */
export type IsoDay = string

/** Mean length of a year in days (Gregorian cycle: 146,097 days in 400 years). */
export const DAYS_PER_YEAR = 365.2425

/**
 * Days since 1970-01-01 of a civil day; null when the text is no real day ('2023-02-30', or a year below 1000).
 * Pure integer arithmetic on the proleptic Gregorian calendar (H. Hinnant, "chrono-compatible low-level date algorithms"), so no clock and no zone.
 */
export function parseDay(day: IsoDay): number | null {
  if (day.length !== 10 || day[4] !== '-' || day[7] !== '-') return null
  const year = digits(day, 0, 4)
  const month = digits(day, 5, 7)
  const date = digits(day, 8, 10)
  if (month < 1 || month > 12 || date < 1 || year < 1000) return null
  if (date > daysInMonth(year, month)) return null
  return dayNumber(year, month, date)
}

/** Whole number in text[from, to); -1 when a character is no digit. */
function digits(text: string, from: number, to: number): number {
  let value = 0
  for (let i = from; i < to; i++) {
    const digit = text.charCodeAt(i) - 48
    if (digit < 0 || digit > 9) return -1
    value = value * 10 + digit
  }
  return value
}

/** Days of a month (1–12) in the Gregorian calendar. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
}

/** Day number of a valid civil date (month 1–12). */
function dayNumber(year: number, month: number, date: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + date - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return era * 146097 + dayOfEra - 719468
}

export interface CivilDate {
  readonly year: number
  readonly month: number
  readonly date: number
}

/** Civil date of a day number; fractions are cut to the day they fall in. */
export function civilDate(day: number): CivilDate {
  const z = Math.floor(day) + 719468
  const era = Math.floor(z / 146097)
  const dayOfEra = z - era * 146097
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const mp = Math.floor((5 * dayOfYear + 2) / 153)
  const month = mp < 10 ? mp + 3 : mp - 9
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, date: dayOfYear - Math.floor((153 * mp + 2) / 5) + 1 }
}

/** ISO text of a day number. */
export function isoDay(day: number): IsoDay {
  const { year, month, date } = civilDate(day)
  return `${String(year).padStart(4, '0')}-${month < 10 ? '0' : ''}${month}-${date < 10 ? '0' : ''}${date}`
}

/** The same date `months` later; the 31st becomes the last day of a shorter month. */
export function addMonths(day: number, months: number): number {
  const { year, month, date } = civilDate(day)
  const index = year * 12 + (month - 1) + months
  const y = Math.floor(index / 12)
  const m = index - y * 12 + 1
  return dayNumber(y, m, Math.min(date, daysInMonth(y, m)))
}

/** First day of the calendar month that lies `months` after the month of `day`. */
export function monthStart(day: number, months: number): number {
  const { year, month } = civilDate(day)
  const index = year * 12 + (month - 1) + months
  const y = Math.floor(index / 12)
  return dayNumber(y, index - y * 12 + 1, 1)
}
