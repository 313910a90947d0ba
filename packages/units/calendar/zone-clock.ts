import { dateFormat } from '../date-format.ts'
import { dayNumber } from './calendar-day.ts'
import { type IsoDay, isoDay } from './day-number.ts'

/** An instant: a Date, milliseconds since 1970, or its ISO text. */
export type Moment = Date | number | string

const DAY_MS = 86_400_000
const MINUTE_MS = 60_000

/** Milliseconds since 1970-01-01 UTC; a RangeError for what is no instant. */
export function instantMs(instant: Moment): number {
  const ms = typeof instant === 'number' ? instant : instant instanceof Date ? instant.getTime() : Date.parse(instant)
  if (!Number.isFinite(ms)) throw new RangeError(`"${String(instant)}" is not an instant.`)
  return ms
}

/** What calendar and clock of a zone show at an instant, in milliseconds since their own 1970-01-01 00:00. */
function wallMs(timeZone: string, instant: Moment): number {
  const format = dateFormat('en-US', {
    ...{ timeZone, calendar: 'gregory', numberingSystem: 'latn', hourCycle: 'h23' },
    ...{ year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: 'numeric', second: 'numeric' },
  })
  const ms = instantMs(instant)
  const part = new Map(format.formatToParts(ms).map(({ type, value }) => [type, Number(value)]))
  const of = (type: Intl.DateTimeFormatPartTypes) => part.get(type) ?? 0
  const seconds = (of('hour') * 60 + of('minute')) * 60 + of('second')
  return Date.UTC(of('year'), of('month') - 1, of('day')) + seconds * 1000
}

const offsetMs = (timeZone: string, ms: number) => wallMs(timeZone, ms) - Math.floor(ms / 1000) * 1000

/** The calendar day of an instant in a zone such as 'America/Chicago'. */
export const dayIn = (timeZone: string, instant: Moment): IsoDay => isoDay(Math.floor(wallMs(timeZone, instant) / DAY_MS))

/** The clock of an instant in a zone, 'HH:MM' on 24 hours: what fields and contracts hold. `formatClock` writes it for people. */
export const clockIn = (timeZone: string, instant: Moment): string =>
  clockOfMinute(Math.floor((wallMs(timeZone, instant) % DAY_MS) / MINUTE_MS))

/** The instant of a minute of a calendar day in a zone; where clocks change, the earlier of two, and after a gap as much later as the gap is long. */
export function instantIn(timeZone: string, day: IsoDay, minuteOfDay: number): Date {
  const wall = dayNumber(day) * DAY_MS + minuteOfDay * MINUTE_MS
  const before = offsetMs(timeZone, wall - DAY_MS)
  const tries = [wall - before, wall - offsetMs(timeZone, wall + DAY_MS)].sort((a, b) => a - b)
  return new Date(tries.find((ms) => wallMs(timeZone, ms) === wall) ?? wall - before)
}

/** The instant at which the clock shows 'HH:MM' on a day in a zone. */
export const instantAt = (timeZone: string, day: IsoDay, clock: string): Date => instantIn(timeZone, day, minuteOfClock(clock))

/** Minutes that pass from one instant to another. */
export const minutesBetween = (from: Moment, until: Moment): number => (instantMs(until) - instantMs(from)) / MINUTE_MS

/** Minutes since midnight of a clock time 'HH:MM'. */
export const minuteOfClock = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5))

/** 'HH:MM' of minutes since midnight. */
export const clockOfMinute = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`

/** Every time zone that the platform knows, by its IANA name. */
export const timeZones = (): readonly string[] => Intl.supportedValuesOf('timeZone')

/** Whether the platform can reckon in a zone. */
export function isTimeZone(text: string): boolean {
  try {
    return dateFormat('en-US', { timeZone: text }) !== undefined
  } catch {
    return false
  }
}

/** The zone of the machine that asks: in a browser, its owner's. */
export const zoneHere = (): string => dateFormat('en-US', {}).resolvedOptions().timeZone
