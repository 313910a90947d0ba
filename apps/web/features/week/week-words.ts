import type { WeekPlace, WeekTown } from '@almanac/contract/week'
import type { JobKind } from '@almanac/records/job-kind'
import type { Display } from '@almanac/units/display'
import { formatDuration, formatMinute } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'

/** A kind of work as it stands in the question. */
export const KIND_PHRASES: Readonly<Record<JobKind, string>> = {
  rebed: 'a rebed',
  'annual-visit': 'an annual visit',
  cleaning: 'a cleaning',
  inspection: 'an inspection',
  repair: 'a repair',
  installation: 'an installation',
  exchange: 'a tank exchange',
  delivery: 'a delivery',
  'warranty-return': 'a warranty visit',
  emergency: 'an emergency',
}

export const peopleWords = (people: number) => (people === 1 ? 'one person' : `${people} people`)

/** "Wed, Dec 2, 11:45 AM to 1:10 PM": when the work may begin; one time where it leaves no choice. */
export function startWords({ day, from, lastStart }: WeekPlace, display: Display): string {
  const first = `${formatNearDay(day, display)}, ${formatMinute(from, display)}`
  return lastStart - from < 5 ? first : `${first} to ${formatMinute(lastStart, display)}`
}

export const driveWords = ({ addedDriveMinutes }: WeekPlace) =>
  addedDriveMinutes === 0 ? 'no more driving' : `${addedDriveMinutes} min more driving`

/** The places of a town, least driving first. */
export const byDriving = (places: readonly WeekPlace[]): WeekPlace[] =>
  [...places].sort((a, b) => a.addedDriveMinutes - b.addedDriveMinutes || a.day.localeCompare(b.day) || a.from - b.from)

/** What the drawing of a town says, for those who don't see it; of its places the best alone. */
export function townWords(town: WeekTown, display: Display): string {
  const work = [
    town.waiting === 0 ? 'nothing waiting' : `${town.waiting} waiting`,
    town.due === 0 ? 'none due' : `${town.due} due soon without a job`,
    town.driveMinutes === null ? 'not on the map' : `${formatDuration(town.driveMinutes, display)} from the yard`,
  ].join(', ')
  if (town.driveMinutes === null) return `${work}.`
  const [best, ...others] = byDriving(town.places)
  if (!best) return `${work}. No crew is near and free this week.`
  const more = others.length === 0 ? '' : others.length === 1 ? ' One more place.' : ` ${others.length} more places.`
  return `${work}. Best: ${startWords(best, display)}, ${best.crewName}, ${driveWords(best)}.${more}`
}

/** The hours that every day of the picture has, as minutes since midnight. */
export type Axis = { from: number; until: number }

/** The share of the axis at which a minute stands, as a percentage; never outside it. */
export function atPercent(minute: number, axis: Axis): number {
  return ((Math.min(Math.max(minute, axis.from), axis.until) - axis.from) / (axis.until - axis.from)) * 100
}

/** Initials of a crew: "Ines & Tomas" is IT. */
export const initials = (name: string) =>
  [...name.matchAll(/\p{Lu}/gu)]
    .map(([letter]) => letter)
    .join('')
    .slice(0, 3) || name.slice(0, 2)
