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
