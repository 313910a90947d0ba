import type { BoardDay } from '@almanac/dispatch/propose/board'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn, instantIn } from '@almanac/units/calendar/zone-clock'
import { minuteOfDay } from './travel-desk.ts'

const MINUTE_MS = 60_000

/** The days from one to another with their length, and where the clocks change, when and by how much. */
export function boardDays(timeZone: string, fromDay: string, untilDay: string): BoardDay[] {
  const days: BoardDay[] = []
  for (let date = fromDay; date <= untilDay; date = addDays(date, 1)) {
    const startMs = instantIn(timeZone, date, 0).getTime()
    const minutesInDay = (instantIn(timeZone, addDays(date, 1), 0).getTime() - startMs) / MINUTE_MS
    const byMinutes = 1440 - minutesInDay
    if (byMinutes === 0) days.push({ date, minutesInDay })
    else days.push({ date, minutesInDay, clockChange: { wallMinute: changeMinute(timeZone, startMs, minutesInDay), byMinutes } })
  }
  return days
}

/** Minutes since midnight at which the clock jumps: the first elapsed minute at which it does not show what has passed. */
function changeMinute(timeZone: string, startMs: number, minutesInDay: number): number {
  for (let minute = 0; minute < minutesInDay; minute += 15)
    if (minuteOfDay(timeZone, new Date(startMs + minute * MINUTE_MS)) !== minute) return minute
  return 0
}

/** What the clock shows at an instant, as minutes since midnight of a sheet's own day; beyond 1,440 where the sheet runs past midnight. */
export function wallMinute(timeZone: string, date: string, instant: Date): number {
  const day = dayIn(timeZone, instant)
  return minuteOfDay(timeZone, instant) + (day > date ? 1440 : day < date ? -1440 : 0)
}
