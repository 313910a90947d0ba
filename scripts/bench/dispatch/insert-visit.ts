import type { Sequences } from '@almanac/dispatch/problem/plan'
import type { RoutingProblem } from '@almanac/dispatch/problem/problem'
import { addedPrice } from '@almanac/dispatch/search/left-out'
import { buildModel, type Model } from '@almanac/dispatch/search/model'
import type { Routes } from '@almanac/dispatch/search/route-types'
import { emptyRoutes } from '@almanac/dispatch/search/routes'
import { setSequences } from '@almanac/dispatch/search/sequences'
import { insertAfter, takeOut } from '@almanac/dispatch/search/splice'

/** A place for one visit: before the `position`-th visit of a crew-day (0: first), and what it adds to the objective. */
export interface PlaceForVisit {
  readonly crewDay: number
  readonly position: number
  readonly addedPrice: number
}

/** A plan as it stands, ready for many questions: making it takes longer than a question does. */
export interface StandingPlan {
  readonly model: Model
  readonly routes: Routes
}

function standingPlan(problem: RoutingProblem, sequences: Sequences): StandingPlan {
  const model = buildModel(problem)
  const routes = emptyRoutes(model, { warp: 0, load: 0 })
  setSequences(routes, sequences)
  return { model, routes }
}

/**
 * Every place where a visit may go with all others kept in theirs, cheapest first: their order and crew-days stay, their times shift only within their windows. A day that is at
 * fault already takes the visit only if its faults do not grow. Empty: nowhere. If the visit stands in `sequences` already, its other places are found.
 */
export function placesForVisit(problem: RoutingProblem, sequences: Sequences, visit: number): PlaceForVisit[] {
  const others = sequences.map((sequence) => sequence.filter((v) => v !== visit))
  return placesIn(standingPlan(problem, others), visit)
}

/** The same for a visit that is not in a standing plan, which is left as it was. */
function placesIn({ model, routes }: StandingPlan, visit: number): PlaceForVisit[] {
  if (visit < 0 || visit >= model.visits || (routes.owner[visit] as number) >= 0) return []
  const places: PlaceForVisit[] = []
  for (let r = 0; r < model.days; r++) {
    const warp = routes.warp[r] as number
    const excess = (routes.excess[r] as number) + 1e-9
    let position = 0
    for (let v = model.visits + r; v < model.visits || position === 0; v = routes.next[v] as number) {
      const added = addedPrice(routes, visit, v)
      if (added < Number.POSITIVE_INFINITY) {
        insertAfter(routes, visit, v)
        const fits = (routes.warp[r] as number) <= warp && (routes.excess[r] as number) <= excess
        takeOut(routes, visit)
        if (fits) places.push({ crewDay: r, position, addedPrice: added })
      }
      position++
    }
  }
  return places.sort((a, b) => a.addedPrice - b.addedPrice || a.crewDay - b.crewDay || a.position - b.position)
}

/** The orders with a visit put into a place. */
export function withVisit(sequences: Sequences, visit: number, place: PlaceForVisit): number[][] {
  return sequences.map((sequence, r) => {
    const others = sequence.filter((v) => v !== visit)
    return r === place.crewDay ? others.toSpliced(place.position, 0, visit) : others
  })
}
