import type { Objective, RoutePlan } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem } from '../problem/problem.ts'
import { endLikely } from './end-likely.ts'
import type { Violation } from './violation.ts'

/** The objective worked out again from the plan's own orders and times, against what the plan says it is. */
export function checkPrices(problem: RoutingProblem, plan: RoutePlan, found: Violation[]): void {
  const again = { driving: 0, overtime: 0, reserve: 0, lateness: 0, fairness: 0, preferences: 0, sending: 0, leftOut: 0 }
  plan.days.forEach((day, r) => {
    if (day.visits.length === 0) return
    const crew = problem.crewDays[r] as CrewDay
    const route = day.visits.map((planned) => problem.visits[planned.visit] as RoutedVisit)
    const stops = [crew.startPlace, ...route.map((visit) => visit.place), crew.endPlace]
    const leaving = [day.start, ...day.visits.map((planned) => planned.end)]
    let busy = 0
    for (let i = 1; i < stops.length; i++) {
      const leg = (stops[i - 1] as number) * problem.places + (stops[i] as number)
      again.driving += crew.distancePrice * (problem.distances[leg] as number) + crew.drivePrice * (problem.durations[leg] as number)
      busy += (problem.durations[leg] as number) * rushFactor(crew, day.pauses, leaving[i - 1] as number, i, day)
    }
    for (const visit of route) {
      busy += visit.serviceTicks
      const late = visit.dueDay === undefined ? 0 : crew.day - visit.dueDay
      if (late > 0) again.lateness += late * (visit.latePricePerDay ?? 0)
      for (const dislike of visit.dislikes ?? []) again.preferences += dislike.crewDay === r ? dislike.price : 0
    }
    for (const { visit: v, start } of day.visits) {
      const stands = problem.visits[v]?.stands
      if (stands && stands.crewDay === r && start !== stands.start) again.preferences += stands.price
    }
    again.sending += crew.sendPrice
    if (day.end > crew.shift.to) again.overtime += (day.end - crew.shift.to) * crew.overtimePrice
    const end = endLikely(problem, crew, day)
    if (crew.reserve && end) {
      const { by, deviations, price } = crew.reserve
      again.reserve += Math.max(0, end.mean + deviations * Math.sqrt(end.variance) - by) * price
    }
    if (crew.fairShareTicks !== undefined && busy > crew.fairShareTicks) {
      again.fairness += (busy - crew.fairShareTicks) * (crew.unfairPrice ?? 0)
    }
  })
  for (const v of plan.leftOut) again.leftOut += problem.visits[v]?.leaveOutPrice ?? 0
  const total = Object.values(again).reduce((sum, part) => sum + part, 0)
  const rounding = 1e-6 * Math.max(1, Math.abs(total))
  for (const part of Object.keys({ ...again, total }) as (keyof Objective)[]) {
    const is = part === 'total' ? total : again[part]
    const said = plan.objective[part]
    // Busy time under rush factors is rounded a drive at a time.
    const slack =
      rounding +
      (part === 'fairness' || part === 'total' ? roundedDrives(problem, plan) : 0) +
      (part === 'reserve' || part === 'total' ? roundedNormals(problem, plan) : 0)
    if (!(Math.abs(is - said) <= slack)) {
      found.push({ kind: 'price', sentence: `The plan states ${said} for ${part}; worked out again it is ${is}.` })
    }
  }
}

/** The factor of the drive to the i-th stop: after pauses taken before leaving, if any. */
function rushFactor(crew: CrewDay, pauses: readonly number[], end: number, i: number, day: RoutePlan['days'][number]): number {
  const arrival = day.visits[i - 1]?.arrival ?? day.end
  let leave = end
  pauses.forEach((begin, p) => {
    const ticks = crew.pauses[p]?.ticks ?? 0
    if (begin >= leave && begin + ticks <= arrival) leave = begin + ticks
  })
  let factor = 1
  for (const rush of crew.rush ?? []) if (leave >= rush.from && leave <= rush.to) factor = rush.factor
  return factor
}

function roundedDrives(problem: RoutingProblem, plan: RoutePlan): number {
  return plan.days.reduce((sum, day, r) => {
    const crew = problem.crewDays[r] as CrewDay
    return sum + ((crew.rush ?? []).length === 0 ? 0 : (day.visits.length + 1) * (crew.unfairPrice ?? 0))
  }, 0)
}

/** The planner takes the normal distribution to seven digits: a twentieth of a tick a visit. */
function roundedNormals(problem: RoutingProblem, plan: RoutePlan): number {
  return plan.days.reduce((sum, day, r) => sum + day.visits.length * 0.05 * (problem.crewDays[r]?.reserve?.price ?? 0), 0)
}
