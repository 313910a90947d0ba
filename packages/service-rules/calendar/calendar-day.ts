/** A calendar day as 'YYYY-MM-DD'. Such strings compare as the days do. */
export type IsoDay = string

/** The ISO day of a year, month (1–12) and day; null where the calendar has no such day or the year has not four digits. */
export function isoDay(year: number, month: number, day: number): IsoDay | null {
  if (!Number.isInteger(year) || year < 1000 || year > 9999) return null
  if (!Number.isInteger(month) || month < 1 || month > 12) return null
  if (!Number.isInteger(day) || day < 1 || day > daysInMonth(year, month)) return null
  return `${year}-${pad(month)}-${pad(day)}`
}

/** Days of a month in the Gregorian calendar. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
}

/** True for a string that is a day of the calendar. */
export function isIsoDay(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  return match !== null && isoDay(Number(match[1]), Number(match[2]), Number(match[3])) !== null
}

/** Days since 1970-01-01, by Hinnant's days_from_civil; needs no clock and no time zone. The text must be an ISO day. */
export function dayNumber(day: IsoDay): number {
  const month = Number(day.slice(5, 7))
  const year = Number(day.slice(0, 4)) - (month <= 2 ? 1 : 0)
  const era = Math.floor(year / 400)
  const yearOfEra = year - era * 400
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + Number(day.slice(8, 10)) - 1
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear
  return era * 146097 + dayOfEra - 719468
}

/** The inverse of `dayNumber`. */
export function fromDayNumber(number: number): IsoDay {
  const shifted = number + 719468
  const era = Math.floor(shifted / 146097)
  const dayOfEra = shifted - era * 146097
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153)
  const day = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${String(year).padStart(4, '0')}-${pad(month)}-${pad(day)}`
}

/** The day a number of days later, or earlier where negative. */
export function addDays(day: IsoDay, days: number): IsoDay {
  return fromDayNumber(dayNumber(day) + days)
}

function pad(number: number): string {
  return String(number).padStart(2, '0')
}
