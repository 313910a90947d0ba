import { addDays } from '@almanac/units/calendar/calendar-day'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'

/** A job that follows another: at least so many days after the day of the other's visit; null while that has none. */
export type InTurn = { leastDays: number; day: string | null }

const daysWords = (days: number) => (days === 1 ? 'a day' : `${days} days`)

/** The first day a job may be done for its turn's sake; null while the visit before has no day. */
export function firstDayInTurn({ leastDays, day }: InTurn): string | null {
  return day === null ? null : addDays(day, leastDays)
}

/** Why a job may not be done on a day, in a sentence; null when it may. */
export function outOfTurn(turn: InTurn, day: string, display: DayDisplay): string | null {
  const first = firstDayInTurn(turn)
  if (first === null) return 'The visit before it has no day yet.'
  if (turn.day === null || day >= first) return null
  const of = formatDay(turn.day, display)
  return turn.leastDays === 0
    ? `It follows the visit of ${of}.`
    : `It must come at least ${daysWords(turn.leastDays)} after the visit of ${of}.`
}
