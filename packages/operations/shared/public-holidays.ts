import { addDays } from '@almanac/units/calendar/calendar-day'
import Holidays from 'date-holidays'

/** A public holiday and its name in English, by which a firm says that it works on it. */
export type PublicHoliday = { day: string; name: string }

/** How far ahead anybody plans. */
const AHEAD_DAYS = 400
const known = new Map<string, readonly PublicHoliday[]>()
let areas: readonly { value: string; label: string }[] | undefined

/** Countries, and under each its regions with holidays of their own: "DE" is Germany, "DE-BY" Bayern in Germany. */
export function holidayAreas(): readonly { value: string; label: string }[] {
  if (areas) return areas
  const book = new Holidays()
  const countries = Object.entries(book.getCountries('en') ?? {})
  areas = countries
    .flatMap(([country, name]) => [
      { value: country, label: name },
      ...Object.entries(book.getStates(country, 'en') ?? {}).map(([state, of]) => ({
        value: `${country}-${state}`,
        label: `${name}: ${of}`,
      })),
    ])
    .sort((a, b) => a.label.localeCompare(b.label))
  return areas
}

export const isHolidayArea = (area: string): boolean => holidayAreas().some((one) => one.value === area)

/** The public holidays of a year in an area, from the package date-holidays; a day that stands in for one on a weekend bears its name. */
export function publicHolidays(area: string, year: number): readonly PublicHoliday[] {
  const key = `${area} ${year}`
  const found = known.get(key)
  if (found) return found
  const [country = '', ...state] = area.split('-')
  const book = state.length > 0 ? new Holidays(country, state.join('-')) : new Holidays(country)
  const days = book
    .getHolidays(year, 'en')
    .filter(({ type }) => type === 'public')
    .map(({ date, name }) => ({ day: date.slice(0, 10), name: name.replace(/ \(substitute day\)$/, '') }))
  known.set(key, days)
  return days
}

/** The days from one on at which a firm keeps its area's holidays; none without an area, or of those on which it works. */
export function holidaysKept(
  { holidayArea, holidaysWorked }: { holidayArea: string | null; holidaysWorked: readonly string[] },
  fromDay: string,
): PublicHoliday[] {
  if (!holidayArea || !isHolidayArea(holidayArea)) return []
  const untilDay = addDays(fromDay, AHEAD_DAYS)
  const [first, last] = [Number(fromDay.slice(0, 4)), Number(untilDay.slice(0, 4))]
  return Array.from({ length: last - first + 1 }, (_, n) => publicHolidays(holidayArea, first + n))
    .flat()
    .filter(({ day, name }) => day >= fromDay && day <= untilDay && !holidaysWorked.includes(name))
}
