import { addDays, weekdayOf } from '@almanac/units/calendar/calendar-day'
import { minuteOfClock } from '@almanac/units/calendar/zone-clock'
import { type Away, awayOn, hoursOn, type Shift } from './working-day.ts'

/** Share of a working day that goes into driving, loading and the yard; common practice, no source. */
export const ON_THE_ROAD = 0.25
/** Days of a firm where nobody's shifts say otherwise, Monday to Friday. */
const LAST_WEEKDAY = 5

export type WorkingPerson = { name: string; shifts: readonly Shift[]; breaks: readonly { minutes: number }[]; away: readonly Away[] }
/** The company's own hours, in minutes of the day. */
export type OpeningHours = { dayStartMinute: number; dayEndMinute: number }

/** Minutes that a person works on a day, breaks and days off taken out. */
function minutesOn(person: WorkingPerson, day: string, { dayStartMinute, dayEndMinute }: OpeningHours): number {
  if (awayOn(person.away, day)) return 0
  const hours = hoursOn(person, day)
  if (hours === 'off' || (hours === null && weekdayOf(day) > LAST_WEEKDAY)) return 0
  const long = hours ? minuteOfClock(hours.until) - minuteOfClock(hours.from) : dayEndMinute - dayStartMinute
  return Math.max(0, long - person.breaks.reduce((sum, one) => sum + one.minutes, 0))
}

/** Hours of work at customers that these people have from `from` on, `until` left out: all of them together, driving and loading taken out. */
export function hoursAtCustomers(people: readonly WorkingPerson[], opening: OpeningHours, from: string, until: string): number {
  let minutes = 0
  for (let day = from; day < until; day = addDays(day, 1)) for (const person of people) minutes += minutesOn(person, day, opening)
  return (minutes * (1 - ON_THE_ROAD)) / 60
}
