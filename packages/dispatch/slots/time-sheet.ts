import type { PlannedDay } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem } from '../problem/problem.ts'
import { timetable } from '../search/timetable.ts'

/** A sheet's day in one order of visits. */
export interface TimedSheet {
  /** In time everywhere, and never too full. */
  readonly fits: boolean
  readonly inTime: boolean
  readonly day: PlannedDay
  readonly drivePrice: number
  readonly overtimePrice: number
  readonly reservePrice: number
  readonly driveTicks: number
  readonly distance: number
  /** Standing still without a pause. */
  readonly waitTicks: number
  /** The fullest moment, as a part of the capacity. */
  readonly fullest: number
}

/** Times one sheet alone, so that trying a gap costs nothing but that day. */
export function timeSheet(problem: RoutingProblem, crew: CrewDay, visits: readonly RoutedVisit[]): TimedSheet {
  const alone: RoutingProblem = { ...problem, visits, crewDays: [crew] }
  const { plan, fits } = timetable(alone, [visits.map((_, v) => v)])
  const day = plan.days[0] as PlannedDay
  let driveTicks = 0
  let distance = 0
  let at = crew.startPlace
  for (const place of [...visits.map((visit) => visit.place), ...(visits.length > 0 ? [crew.endPlace] : [])]) {
    driveTicks += problem.durations[at * problem.places + place] as number
    distance += problem.distances[at * problem.places + place] as number
    at = place
  }
  const work = visits.reduce((sum, visit) => sum + visit.serviceTicks, 0)
  const pauses = day.pauses.reduce((sum, _, i) => sum + (crew.pauses[i]?.ticks ?? 0), 0)
  const fullest = fullestShare(crew, visits)
  return {
    fits: fits && fullest <= 1 + 1e-9,
    inTime: fits,
    day,
    drivePrice: plan.objective.driving,
    overtimePrice: plan.objective.overtime,
    reservePrice: plan.objective.reserve,
    driveTicks,
    distance,
    waitTicks: Math.max(0, day.end - day.start - driveTicks - work - pauses),
    fullest,
  }
}

/** What goes out is on board until its visit, what comes back from its visit on. Infinity when something is carried by a vehicle that carries nothing. */
export function fullestShare(crew: Pick<CrewDay, 'capacity'>, visits: readonly Pick<RoutedVisit, 'out' | 'back'>[]): number {
  let ft3 = visits.reduce((sum, visit) => sum + visit.out.ft3, 0)
  let lb = visits.reduce((sum, visit) => sum + visit.out.lb, 0)
  let fullest = Math.max(share(ft3, crew.capacity.ft3), share(lb, crew.capacity.lb))
  for (const visit of visits) {
    ft3 += visit.back.ft3 - visit.out.ft3
    lb += visit.back.lb - visit.out.lb
    fullest = Math.max(fullest, share(ft3, crew.capacity.ft3), share(lb, crew.capacity.lb))
  }
  return fullest
}

function share(amount: number, capacity: number): number {
  return amount <= 1e-9 ? 0 : amount / capacity
}

/** Every order with one visit put into a gap, first gap first. */
export function withVisitIn(visits: readonly RoutedVisit[], visit: RoutedVisit): RoutedVisit[][] {
  return Array.from({ length: visits.length + 1 }, (_, gap) => visits.toSpliced(gap, 0, visit))
}
