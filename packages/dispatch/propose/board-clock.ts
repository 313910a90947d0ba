import type { BoardDay } from './board.ts'

/** Turns wall clocks into seconds from the horizon's first midnight and back, days with a change of clocks included. */
export interface BoardClock {
  readonly days: readonly BoardDay[]
  readonly starts: readonly number[]
  readonly end: number
}

export function boardClock(days: readonly BoardDay[]): BoardClock {
  const starts: number[] = []
  let end = 0
  for (const day of days) {
    starts.push(end)
    end += day.minutesInDay * 60
  }
  return { days, starts, end }
}

/** Minutes since midnight that have passed when the clock shows `wall`. A time shown twice is taken the first time, one never shown as the moment of the change. */
function elapsedMinutes(day: BoardDay, wall: number): number {
  const change = day.clockChange
  if (change === undefined || wall < change.wallMinute) return wall
  return change.byMinutes > 0 ? Math.max(change.wallMinute, wall - change.byMinutes) : wall - change.byMinutes
}

/** What the clock shows when so many minutes have passed since midnight. */
function wallMinutes(day: BoardDay, elapsed: number): number {
  const change = day.clockChange
  return change === undefined || elapsed < change.wallMinute ? elapsed : elapsed + change.byMinutes
}

/** Position of a date in the horizon, −1 outside it. */
export function dayIndex(clock: BoardClock, date: string): number {
  return clock.days.findIndex((day) => day.date === date)
}

/** Seconds from the horizon's beginning; the date must lie in it. */
export function toTicks(clock: BoardClock, index: number, wall: number): number {
  return (clock.starts[index] as number) + Math.round(elapsedMinutes(clock.days[index] as BoardDay, wall) * 60)
}

/** Wall clock of a moment on a given day, in whole minutes, rounded up: nobody is told to come before the crew can be there. */
export function toWall(clock: BoardClock, index: number, ticks: number): number {
  return wallMinutes(clock.days[index] as BoardDay, Math.ceil((ticks - (clock.starts[index] as number)) / 60 - 1e-9))
}

/** Days since 1970-01-01 of a calendar day (H. Hinnant, "chrono-compatible low-level date algorithms": days_from_civil); NaN when the text is no day. */
export function dayNumber(date: string): number {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date)
  if (parts === null) return Number.NaN
  const month = Number(parts[2])
  const day = Number(parts[3])
  if (month < 1 || month > 12 || day < 1 || day > 31) return Number.NaN
  const year = Number(parts[1]) - (month <= 2 ? 1 : 0)
  const era = Math.floor(year / 400)
  const yearOfEra = year - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  return era * 146097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719468
}
