import { weekdayOf } from '@almanac/units/calendar/calendar-day'

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']

/** '9:40' of minutes since midnight, on a clock of 24 hours. */
export function sayTime(minute: number): string {
  const whole = Math.round(minute)
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}

/** '1 h 20 min'. */
export function sayMinutes(minutes: number): string {
  const whole = Math.round(minutes)
  if (whole < 60) return `${whole} min`
  return whole % 60 === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${whole % 60} min`
}

/** 'Thursday 2026-11-26'. 1970-01-01 was a Thursday. */
export function sayDay(date: string): string {
  return `${WEEKDAYS[weekdayOf(date) - 1]} ${date}`
}

/** Names in a row: 'a', 'a and b', 'a, b and c'. */
export function sayList(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}

/** '1 person', '2 people'. */
export function sayPeople(people: number): string {
  return people === 1 ? '1 person' : `${people} people`
}
