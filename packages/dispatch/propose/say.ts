import type { AmountDisplay } from '@almanac/units/display'
import { formatClocks, formatMinute } from '@almanac/units/format-clock'
import { formatDayTitle } from '@almanac/units/format-day'

/** How the sentences of a plan write days, clocks, numbers and miles. */
export type Saying = AmountDisplay

/** '9:40 AM' of minutes since midnight. */
export const sayTime = (minute: number, saying: Saying): string => formatMinute(minute, saying)

/** '9:40 – 10:40 AM'. */
export const sayTimes = (from: number, until: number, saying: Saying): string =>
  formatClocks(from * 60_000, until * 60_000, { ...saying, timeZone: 'UTC' })

/** 'Thursday, November 26'. The days of a board lie within weeks of each other. */
export const sayDay = (date: string, saying: Saying): string => formatDayTitle(date, date, saying)

/** Names in a row: 'a', 'a and b', 'a, b and c'. */
export function sayList(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}

/** '1 person', '2 people'. */
export function sayPeople(people: number): string {
  return people === 1 ? '1 person' : `${people} people`
}
