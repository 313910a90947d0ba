import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import type { RoutePlan } from '@almanac/dispatch/problem/plan'
import type { RoutingProblem } from '@almanac/dispatch/problem/problem'
import { timetable } from '@almanac/dispatch/search/timetable'

/** The cheapest plan the checker passes, by trying every order on every crew-day: for a handful of visits only. Null when there is none. */
export function bestOfAll(problem: RoutingProblem): RoutePlan | null {
  let best: RoutePlan | null = null
  const orders: number[][] = problem.crewDays.map(() => [])
  const visit = (v: number): void => {
    if (v === problem.visits.length) {
      const { plan } = timetable(problem, orders)
      if ((best === null || plan.objective.total < best.objective.total) && checkPlan(problem, plan).length === 0) best = plan
      return
    }
    if (problem.visits[v]?.leaveOutPrice !== undefined) visit(v + 1)
    for (const order of orders) {
      for (let at = 0; at <= order.length; at++) {
        order.splice(at, 0, v)
        visit(v + 1)
        order.splice(at, 1)
      }
    }
  }
  visit(0)
  return best
}
