import type { DriverKey } from '@almanac/records/forecast-driver'
import { yearsBetween } from '@almanac/units/calendar/calendar-day'

/** What is told to a customer of why: the water's own doing, and since when where it came later than the bed. */
export type Reason = { key: 'chloramine' | 'free-chlorine' | 'iron'; sinceYear: number | null }
/** How old a bed is and how old it likely grows, in whole years; `likely` is null where it is as old as most grow. */
export type Life = { lived: number; likely: number | null }

const TOLD = ['chloramine', 'free-chlorine', 'iron'] as const satisfies readonly DriverKey[]
/** Below this a driver explains nothing that a customer would notice. */
const YEARS_WORTH_TELLING = 0.5
/** A driver that began within so many years of the bed has always been there. */
const SINCE_THE_START = 0.5

/** What took most years of the bed's life, of what a customer understands; null where nothing took enough. `beganDay` is the middle of when the bed went in. */
export function reasonOf(drivers: readonly { key: string; yearsTaken: number; fromDay: string }[], beganDay: string | null): Reason | null {
  const told = drivers.filter((one) => (TOLD as readonly string[]).includes(one.key) && one.yearsTaken >= YEARS_WORTH_TELLING)
  const first = told.sort((a, b) => b.yearsTaken - a.yearsTaken)[0]
  if (!first) return null
  const changed = beganDay !== null && yearsBetween(beganDay, first.fromDay) > SINCE_THE_START
  return { key: first.key as Reason['key'], sinceYear: changed ? Number(first.fromDay.slice(0, 4)) : null }
}

/** The bed's age beside the age at which half of such beds have failed; null where nobody knows when it went in. */
export function lifeOf(beganDay: string | null, middleDueDay: string | null, today: string): Life | null {
  if (beganDay === null || middleDueDay === null) return null
  const lived = Math.max(0, Math.round(yearsBetween(beganDay, today)))
  const likely = Math.round(yearsBetween(beganDay, middleDueDay))
  return { lived, likely: likely > lived ? likely : null }
}
