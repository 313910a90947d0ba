import { Temporal } from 'temporal-polyfill'

export type Clock = () => Date

let clock: Clock = () => new Date()

/** The present instant. All other code asks here, so that a test can stand at any day. */
export function now(): Date {
  return clock()
}

/** Sets another clock, for tests; without argument, the real one again. */
export function setClock(other?: Clock): void {
  clock = other ?? (() => new Date())
}

/** The calendar day 'YYYY-MM-DD' of an instant in a time zone such as 'America/Chicago'. */
export function dayIn(timeZone: string, instant: Date = now()): string {
  return Temporal.Instant.fromEpochMilliseconds(instant.getTime()).toZonedDateTimeISO(timeZone).toPlainDate().toString()
}

/** The instant of a minute of a calendar day in a time zone; on days when clocks change, the earlier of two and the first after a gap. */
export function instantIn(timeZone: string, day: string, minuteOfDay: number): Date {
  const time = Temporal.PlainTime.from({ hour: Math.floor(minuteOfDay / 60), minute: minuteOfDay % 60 })
  return new Date(Temporal.PlainDate.from(day).toZonedDateTime({ timeZone, plainTime: time }).epochMilliseconds)
}

/** Days from `from` to `to`, both 'YYYY-MM-DD'. */
export function daysBetween(from: string, to: string): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days
}

/** The day so many days later (or earlier). */
export function addDays(day: string, days: number): string {
  return Temporal.PlainDate.from(day).add({ days }).toString()
}
