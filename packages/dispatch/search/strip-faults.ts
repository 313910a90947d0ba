import { copyOut, type Individual, putBack } from './individual.ts'
import { pricedWithFaults } from './population.ts'
import type { Routes } from './route-types.ts'
import { insertAfter, takeOut } from './splice.ts'

/** When no plan without faults is known: the best with, less the fewest visits that rid it of them. Null when there is none at all. */
export function stripFaults(s: Routes, faulty: readonly Individual[]): Individual | null {
  const least = faulty.reduce<Individual | null>(
    (best, plan) => (best === null || pricedWithFaults(plan, s.penalties) < pricedWithFaults(best, s.penalties) ? plan : best),
    null,
  )
  if (least === null) return null
  putBack(s, least)
  for (let r = 0; r < s.model.days; r++) while (isFaulty(s, r)) takeOutWorst(s, r)
  return copyOut(s)
}

const isFaulty = (s: Routes, r: number): boolean => (s.warp[r] as number) > 0 || (s.excess[r] as number) > 1e-9

/** Takes out the visit without which least fault is left; a promised one only when nothing else is on the route. */
function takeOutWorst(s: Routes, r: number): void {
  const { visits, problem } = s.model
  let worst = -1
  let left = Number.POSITIVE_INFINITY
  for (let u = s.next[visits + r] as number; u < visits; ) {
    const before = s.prev[u] as number
    const after = s.next[u] as number
    takeOut(s, u)
    const fault = (s.fault[r] as number) + (problem.visits[u]?.promised ? 1e12 : 0)
    insertAfter(s, u, before)
    if (fault < left) {
      left = fault
      worst = u
    }
    u = after
  }
  takeOut(s, worst)
}
