import { type Individual, setRoute } from './individual.ts'
import type { Neighbours } from './neighbours.ts'
import type { Random } from './random.ts'
import type { Routes } from './route-types.ts'
import { clearRoutes } from './routes.ts'

/** In a large week an exchange stays a neighbourhood, or each descent would work the whole week through. */
const MOST_ROUTES = 15

/**
 * Selective route exchange (Nagata, Bräysy and Dullaert 2010): some near routes of the first plan give way to the routes of the second that overlap them most (on crew-days
 * that differ: to those of the same crew-days). What neither brings stays left out, for the descent to place. Answers the clock up to which routes are settled.
 */
export function crossOver(s: Routes, first: Individual, second: Individual, neighbours: Neighbours, random: Random): number {
  const { days, visits, uniform } = s.model
  const leaving = nearRoutes(first, neighbours, random, days, visits)
  const inRoute = routeOf(first, visits)
  const overlap = new Int32Array(days)
  for (let r = 0, i = 0; r < days; r++) {
    for (; i < (second.ends[r] as number); i++) {
      const r1 = inRoute[second.order[i] as number] as number
      if (r1 >= 0 && leaving.has(r1)) overlap[r] = (overlap[r] as number) + 1
    }
  }
  const slots = [...leaving]
  const coming = uniform ? [...overlap.keys()].sort((a, b) => (overlap[b] as number) - (overlap[a] as number) || a - b) : slots
  clearRoutes(s)
  const keepComing = random.below(2) === 0
  const bring = () => {
    slots.forEach((r, i) => {
      if ((overlap[coming[i] as number] as number) > 0) setRoute(s, r, second, coming[i] as number)
    })
  }
  if (keepComing) bring()
  let settled = 0
  if (!keepComing) {
    for (let r = 0; r < days; r++) if (!leaving.has(r)) setRoute(s, r, first, r)
    settled = s.clock.now
    bring()
    return settled
  }
  const whole: number[] = []
  for (let r = 0; r < days; r++) {
    if (leaving.has(r)) continue
    setRoute(s, r, first, r)
    const had = (first.ends[r] as number) - (r === 0 ? 0 : (first.ends[r - 1] as number))
    if (s.count[r] === had) whole.push(r)
  }
  // Routes taken over whole were settled among each other in the first plan.
  settled = s.clock.now
  for (let r = 0; r < days; r++) s.changed[r] = settled + 1
  s.clock.now++
  for (const r of whole) s.changed[r] = settled
  return settled
}

function routeOf(plan: Individual, visits: number): Int32Array {
  const routes = new Int32Array(visits).fill(-1)
  for (let r = 0, i = 0; r < plan.ends.length; r++) {
    for (; i < (plan.ends[r] as number); i++) routes[plan.order[i] as number] = r
  }
  return routes
}

/** Some routes near a visit drawn at random, at least one and not all. */
function nearRoutes(plan: Individual, neighbours: Neighbours, random: Random, days: number, visits: number): Set<number> {
  const routes = routeOf(plan, visits)
  let used = 0
  for (let r = 0; r < days; r++) if ((plan.ends[r] as number) > (r === 0 ? 0 : (plan.ends[r - 1] as number))) used++
  const wanted = 1 + random.below(Math.max(1, Math.min(MOST_ROUTES, used - 1)))
  const chosen = new Set<number>()
  const centre = random.below(visits)
  if ((routes[centre] as number) >= 0) chosen.add(routes[centre] as number)
  for (let i = 0; i < neighbours.width && chosen.size < wanted; i++) {
    const r = routes[neighbours.list[centre * neighbours.width + i] as number] as number
    if (r >= 0) chosen.add(r)
  }
  return chosen
}
