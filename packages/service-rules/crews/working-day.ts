import { weekdayOf } from '@almanac/units/calendar/calendar-day'
import { formatClockTime } from '@almanac/units/format-clock'
import { type DayDisplay, formatNearDay, formatWeekday } from '@almanac/units/format-day'

/** Clock times 'HH:MM'; weekdays from 1, Monday, to 7. */
export type Shift = { weekday: number; from: string; until: string }
/** Days away, both included; `untilDay` null: until further notice. */
export type Away = { fromDay: string; untilDay: string | null; word: string | null }

export type PersonAtWork = { name: string; shifts: readonly Shift[]; away: readonly Away[] }
export type VehicleInUse = { name: string; away: readonly Away[] }
export type CrewDayPlanned = {
  day: string
  from: string
  until: string
  people: readonly PersonAtWork[]
  vehicle: VehicleInUse | null
}

/** What of the days away covers a day; null when none does. */
export function awayOn(away: readonly Away[], day: string): Away | null {
  return away.find((one) => one.fromDay <= day && (one.untilDay === null || day <= one.untilDay)) ?? null
}

/** "holiday, until Tue, Dec 8", "until further notice": to stand after a name. */
export function awayWords({ untilDay, word }: Away, display: DayDisplay): string {
  return [word, untilDay === null ? 'until further notice' : `until ${formatNearDay(untilDay, display)}`].filter(Boolean).join(', ')
}

/** The hours of a person on a day: their shift, null where nothing is said of their hours, 'off' where they do not work on that weekday. */
export function hoursOn(person: Pick<PersonAtWork, 'shifts'>, day: string): { from: string; until: string } | 'off' | null {
  if (person.shifts.length === 0) return null
  return person.shifts.find((one) => one.weekday === weekdayOf(day)) ?? 'off'
}

/** True for someone who is away on a day or never works on its weekday. */
export const isOff = (person: Pick<PersonAtWork, 'shifts' | 'away'>, day: string): boolean =>
  awayOn(person.away, day) !== null || hoursOn(person, day) === 'off'

/** Why a person does not work on a day, to stand after their name; null when they do. */
export function offWords(person: PersonAtWork, day: string, display: DayDisplay): string | null {
  const away = awayOn(person.away, day)
  if (away) return `is off: ${awayWords(away, display)}`
  return hoursOn(person, day) === 'off' ? `does not work on ${formatWeekday(weekdayOf(day), display)}s` : null
}

/** Who of a sheet is not there that day, and a vehicle off the road, a sentence each. */
export function offWarnings({ day, people, vehicle }: Pick<CrewDayPlanned, 'day' | 'people' | 'vehicle'>, display: DayDisplay): string[] {
  const off = people.flatMap((person) => {
    const words = offWords(person, day, display)
    return words ? [`${person.name} ${words}.`] : []
  })
  const away = vehicle && awayOn(vehicle.away, day)
  return away ? [...off, `${vehicle.name} is out of service: ${awayWords(away, display)}.`] : off
}

/** Whose shift does not cover the sheet's hours, of those who work that day, a sentence each. */
function hoursWarnings({ day, from, until, people }: CrewDayPlanned, display: DayDisplay): string[] {
  const clock = (time: string) => formatClockTime(time, display)
  return people.flatMap((person) => {
    const hours = awayOn(person.away, day) ? null : hoursOn(person, day)
    const outside = hours !== null && hours !== 'off' && (from < hours.from || until > hours.until)
    return outside
      ? [
          `${person.name} works from ${clock(hours.from)} to ${clock(hours.until)} on that day; the sheet runs from ${clock(from)} to ${clock(until)}.`,
        ]
      : []
  })
}

/** What does not agree between a sheet and its people and vehicle, a sentence each. It may stand all the same: the dispatcher knows why. */
export const crewWarnings = (planned: CrewDayPlanned, display: DayDisplay): string[] => [
  ...offWarnings(planned, display),
  ...hoursWarnings(planned, display),
]
