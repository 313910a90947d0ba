import type { CrewDay, RoutedVisit, RoutingProblem, Span } from '../problem/problem.ts'
import { currentSheet } from './current-sheet.ts'
import { type TimedSheet, timeSheet, withVisitIn } from './time-sheet.ts'

/** Why a visit cannot go on a sheet, the first reason that holds in this order. */
export type Obstacle = 'promised' | 'early' | 'people' | 'skill' | 'window' | 'load' | 'time'

/** A place found for a visit on a sheet. */
export interface Gap {
  readonly position: number
  readonly timed: TimedSheet
}

/** What stands against a visit before any time is looked at; null: nothing. */
export function plainObstacle(crew: CrewDay, r: number, visit: RoutedVisit): Obstacle | null {
  if (visit.promised !== undefined && visit.promised.crewDay !== r) return 'promised'
  if (visit.allowedCrewDays !== undefined && !visit.allowedCrewDays.includes(r)) return 'promised'
  if (visit.releaseDay !== undefined && crew.day < visit.releaseDay) return 'early'
  if (visit.people > crew.people) return 'people'
  if (!visit.skills.every((skill) => crew.skills.includes(skill))) return 'skill'
  return windowsOn(crew, visit).length === 0 ? 'window' : null
}

/** A visit's windows within the crew's day. */
function windowsOn(crew: CrewDay, visit: RoutedVisit): readonly Span[] {
  const windows = visit.promised ? [visit.promised.start] : visit.windows
  return windows.filter((window) => window.from <= crew.latestEnd && window.to >= crew.shift.from)
}

/** Every gap of a sheet that takes the visit with all others in their order, and none of the sheet's present faults made worse. */
export function gapsFor(problem: RoutingProblem, crew: CrewDay, others: readonly RoutedVisit[], visit: RoutedVisit): Gap[] {
  const standing = currentSheet(problem, crew, others)
  // The visit itself has no claim to the time that others are late.
  const mayEnd = standing.broken ? withinDay(crew, visit) : visit
  return withVisitIn(standing.visits, mayEnd).flatMap((order, position) => {
    const timed = timeSheet(problem, standing.crew, order)
    return timed.fits ? [{ position, timed }] : []
  })
}

function withinDay(crew: CrewDay, visit: RoutedVisit): RoutedVisit {
  return { ...visit, windows: windowsOn(crew, visit) }
}

/** The reason that holds, or the gaps. */
export function obstacleOrGaps(
  problem: RoutingProblem,
  crew: CrewDay,
  r: number,
  others: readonly RoutedVisit[],
  visit: RoutedVisit,
): Obstacle | Gap[] {
  const plain = plainObstacle(crew, r, visit)
  if (plain !== null) return plain
  const gaps = gapsFor(problem, crew, others, visit)
  if (gaps.length > 0) return gaps
  const standing = currentSheet(problem, crew, others)
  return withVisitIn(standing.visits, visit).some((order) => timeSheet(problem, standing.crew, order).inTime) ? 'load' : 'time'
}

/** Start of the visit at a position of a timed sheet. */
export function startAt(gap: Gap): number {
  return gap.timed.day.visits[gap.position]?.start as number
}
