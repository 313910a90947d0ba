import type { RoutePlan, Sequences } from '../problem/plan.ts'
import type { RoutingProblem } from '../problem/problem.ts'
import { crossOver } from './crossover.ts'
import { copyOut, type Individual, putBack } from './individual.ts'
import { type Descent, descend, newDescent } from './local-search.ts'
import { buildModel } from './model.ts'
import { findNeighbours, pricePerTick } from './neighbours.ts'
import { chooseParents, type Population, type PopulationSizes, takeIn } from './population.ts'
import { type Random, seededRandom } from './random.ts'
import type { Penalties, Routes } from './route-types.ts'
import { clearRoutes, emptyRoutes } from './routes.ts'
import { sequencesOf, setSequences } from './sequences.ts'
import { stripFaults } from './strip-faults.ts'
import { timetable } from './timetable.ts'

/** How the search goes about it; the usual values were chosen on the Solomon instances. */
export interface PlannerOptions {
  readonly seed: number
  /** Orders to start from: the plan as it stands. */
  readonly from?: Sequences
  readonly neighbours?: number
  readonly sizes?: Partial<PopulationSizes>
  /** Plans made from nothing before the first are crossed. */
  readonly founders?: number
  /** Iterations without a gain after which the search begins anew from other founders, keeping its best plan. */
  readonly restartAfter?: number
}

/** A search under way. */
export interface Planner {
  /** Does so many iterations, or fewer when `shouldStop` (asked after each) says so; answers how many. */
  improve(iterations: number, shouldStop?: () => boolean): number
  /** The best plan so far, with its timetable. Asking changes nothing. */
  best(): RoutePlan
}

const ADJUST_EVERY = 40
const TARGET_FEASIBLE = 0.4
const REPAIR_BOOST = 12

/**
 * Hybrid genetic search (Vidal 2022) for one problem; check the problem with `problemFaults` first. The same seed and iterations give the same plan. It reads no clock: give
 * `shouldStop` the time.
 */
export function startPlanning(problem: RoutingProblem, options: PlannerOptions): Planner {
  const model = buildModel(problem)
  const scale = pricePerTick(model)
  const penalties: Penalties = { warp: 2 * scale, load: firstLoadPenalty(model.edge, model.demand, model.uniform) }
  const routes = emptyRoutes(model, penalties)
  const neighbours = findNeighbours(model, options.neighbours ?? 30)
  const descent = newDescent(neighbours, model.visits)
  const random = seededRandom(options.seed)
  const sizes: PopulationSizes = { least: 25, brood: 40, elite: 4, close: 5, ...options.sizes }
  const population: Population = { sizes, feasible: [], faulty: [] }
  const founders = options.founders ?? Math.max(4, Math.min(25, Math.round(2500 / Math.max(1, model.visits))))
  const restartAfter = options.restartAfter ?? 1200
  const counts = { done: 0, feasibleLoad: 0, feasibleTime: 0, since: 0 }
  let best: Individual | null = null
  // Of the present founding: how many iterations it has had, its least price, and when that fell last.
  let age = 0
  let least = Number.POSITIVE_INFINITY
  let gained = 0

  const take = (plan: Individual): void => {
    if (plan.feasible && (best === null || plan.price < best.price - 1e-9)) best = plan
    if (plan.feasible && plan.price < least - 1e-9) {
      least = plan.price
      gained = age
    }
    takeIn(population, plan, penalties)
  }
  if (options.from !== undefined) {
    setSequences(routes, options.from)
    take(copyOut(routes))
  }

  const iterate = (): void => {
    let settled = -1
    if (age - gained > restartAfter) {
      population.feasible.length = 0
      population.faulty.length = 0
      age = 0
      gained = 0
      least = Number.POSITIVE_INFINITY
    }
    if (counts.done === 0 && options.from !== undefined) setSequences(routes, options.from)
    else if (age < founders) clearRoutes(routes)
    else {
      const [first, second] = chooseParents(population, penalties, random)
      settled = crossOver(routes, first, second, neighbours, random)
    }
    descend(routes, descent, random, settled)
    const plan = copyOut(routes)
    take(plan)
    counts.done++
    age++
    counts.since++
    if (plan.warp === 0) counts.feasibleTime++
    if (plan.excess <= 1e-9) counts.feasibleLoad++
    if (!plan.feasible && random.below(2) === 0) repair(routes, descent, random, plan, take)
    if (counts.since === ADJUST_EVERY) adjust(penalties, counts)
  }

  return {
    improve(iterations, shouldStop) {
      if (model.visits === 0 || model.days === 0) return 0
      for (let i = 0; i < iterations; i++) {
        iterate()
        if (shouldStop?.()) return i + 1
      }
      return iterations
    },
    best() {
      const shown = best ?? stripFaults(routes, population.faulty)
      return timetable(problem, shown === null ? problem.crewDays.map(() => []) : sequencesOf(shown)).plan
    },
  }
}

function repair(s: Routes, descent: Descent, random: Random, plan: Individual, take: (plan: Individual) => void): void {
  const { warp, load } = s.penalties
  s.penalties.warp *= REPAIR_BOOST
  s.penalties.load *= REPAIR_BOOST
  putBack(s, plan)
  descend(s, descent, random, -1)
  s.penalties.warp = warp
  s.penalties.load = load
  const mended = copyOut(s)
  if (mended.feasible) take(mended)
}

interface Counts {
  feasibleLoad: number
  feasibleTime: number
  since: number
}

function adjust(penalties: Penalties, counts: Counts): void {
  const step = (share: number) => (share < TARGET_FEASIBLE - 0.05 ? 1.25 : share > TARGET_FEASIBLE + 0.05 ? 0.85 : 1)
  penalties.warp = Math.min(1e6, Math.max(1e-3, penalties.warp * step(counts.feasibleTime / counts.since)))
  penalties.load = Math.min(1e6, Math.max(1e-3, penalties.load * step(counts.feasibleLoad / counts.since)))
  counts.feasibleLoad = 0
  counts.feasibleTime = 0
  counts.since = 0
}

/** A unit of load too much costs at first what the dearest drive does for the heaviest visit (or, walked, for a tenth of the capacity). */
function firstLoadPenalty(edge: Float64Array, demand: Float64Array, uniform: boolean): number {
  let dearest = 1
  for (const price of edge) if (price > dearest) dearest = price
  let heaviest = uniform ? 1 : 10
  if (uniform) for (const load of demand) if (load > heaviest) heaviest = load
  return dearest / heaviest
}
