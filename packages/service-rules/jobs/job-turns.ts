import { addDays } from '@almanac/units/calendar/calendar-day'

/** A job that follows another: at least so many days after the day of the other's visit; null while that has none. */
export type InTurn = { leastDays: number; day: string | null }

const daysWords = (days: number) => (days === 1 ? 'a day' : `${days} days`)

/** The first day a job may be done for its turn's sake; null while the visit before has no day. */
export function firstDayInTurn({ leastDays, day }: InTurn): string | null {
  return day === null ? null : addDays(day, leastDays)
}

/** Why a job may not be done on a day, in a sentence; null when it may. */
export function outOfTurn(turn: InTurn, day: string): string | null {
  const first = firstDayInTurn(turn)
  if (first === null) return 'It follows another visit, which has no day yet.'
  if (day >= first) return null
  return turn.leastDays === 0
    ? `It follows the visit of ${turn.day}.`
    : `It must come at least ${daysWords(turn.leastDays)} after the visit of ${turn.day}.`
}
