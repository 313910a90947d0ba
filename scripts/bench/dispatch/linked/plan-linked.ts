import { seededRandom } from '@almanac/dispatch/search/random'
import { decode, keepDraft } from './decode.ts'
import { copyDraft, type Decoder, type LinkedDraft, newDecoder, newDraft } from './draft.ts'
import { buildLinkedModel, type LinkedModel } from './linked-model.ts'
import type { LinkedPlan, LinkedProblem } from './linked-problem.ts'
import { type Changed, crossTails, exchange, leave, listVisits, type MoveBench, relocate, restaff, shift } from './moves.ts'
import { writeLinkedPlan } from './write-linked-plan.ts'

/** A search that can be stopped and gone on with at any time; the same seed and number of iterations give the same plan. */
export interface LinkedPlanner {
  /** Makes up to `iterations` further steps; asks `shouldStop` every 1,000. Answers how many it made. */
  improve(iterations: number, shouldStop?: () => boolean): number
  best(): LinkedPlan
}

/** Steps a visit: a short first cooling, so that there soon is a fair plan, then long ones that can leave its neighbourhood. */
const FIRST_COOLING = 2000
const COOLING = 10_000
/** The last heat as a part of the first. */
const COLDEST = 1 / 100

/**
 * Plans visits whose parts are linked in time, and so forms crews: annealing over one common order of all work, from which everyone's own order follows
 * (so people never wait for each other in a ring), with exact earliest times. Cooling follows cooling, each hot enough to leave the plan it begins with, so that the search can
 * be stopped early and still uses a long run. `problem` must be free of faults (`linkedFaults`).
 */
export function startLinkedPlanning(problem: LinkedProblem, { seed }: { seed: number }): LinkedPlanner {
  const model = buildLinkedModel(problem)
  const random = seededRandom(seed)
  const decoder = newDecoder(model)
  const current = newDraft(model)
  const best = newDraft(model)
  const candidate = newDraft(model)
  const bench: MoveBench = { model, random, draft: candidate, planned: new Int32Array(0), leftOut: new Int32Array(0), relisted: false }
  current.out = model.leaveOut.reduce((sum, price) => sum + price, 0)
  keepDraft(decoder, current, 0)
  Object.assign(bench, listVisits(model, current))
  construct(decoder, bench, current)
  copyDraft(current, best)
  const optional = problem.visits.some((visit) => visit.leaveOutPrice !== undefined)
  const hottest = startingHeat(model)
  const logs = Float64Array.from({ length: 4096 }, (_, i) => -Math.log((i + 0.5) / 4096))
  let length = FIRST_COOLING * Math.max(4, problem.visits.length)
  let step = 0
  let heat = hottest

  const stepOnce = (): void => {
    if (step === length) {
      step = 0
      length = COOLING * Math.max(4, problem.visits.length)
      copyDraft(best, current)
      keepDraft(decoder, current, 0)
      Object.assign(bench, listVisits(model, current))
    }
    if (step % 100 === 0) heat = hottest * COLDEST ** (step / length)
    step++
    copyDraft(current, candidate)
    const changed = move(bench, optional)
    if (changed < 0) return
    const bound = current.total + heat * (logs[random.below(4096)] as number)
    const total = decode(decoder, candidate, changed, bound, false)
    if (total === Number.POSITIVE_INFINITY) return
    copyDraft(candidate, current)
    keepDraft(decoder, current, changed)
    if (bench.relisted) Object.assign(bench, listVisits(model, current))
    if (current.total < best.total - 1e-9) copyDraft(current, best)
  }

  return {
    improve(iterations, shouldStop) {
      if (problem.visits.length === 0 || model.people === 0) return 0
      for (let i = 0; i < iterations; i++) {
        if (i % 1000 === 0 && shouldStop?.()) return i
        stepOnce()
      }
      return iterations
    },
    best() {
      copyDraft(best, candidate)
      keepDraft(decoder, candidate, 0)
      const plan = writeLinkedPlan(decoder, candidate)
      keepDraft(decoder, current, 0)
      return plan
    },
  }
}

function move(bench: MoveBench, optional: boolean): Changed {
  const { random, planned, leftOut } = bench
  bench.relisted = false
  if (leftOut.length > 0 && (planned.length === 0 || random.below(3) === 0)) {
    bench.relisted = true
    const out = leftOut[random.below(leftOut.length)] as number
    if (planned.length > 0 && random.below(3) === 0) leave(bench, planned[random.below(planned.length)] as number)
    return relocate(bench, out, true) < 0 ? -1 : 0
  }
  if (planned.length === 0) return -1
  const visit = planned[random.below(planned.length)] as number
  const kind = random.below(20)
  if (optional && kind === 0 && random.below(4) === 0) {
    bench.relisted = true
    return leave(bench, visit)
  }
  if (kind < 9) return relocate(bench, visit, false)
  if (kind < 12) return restaff(bench, visit)
  if (kind < 15) return shift(bench, visit)
  if (kind < 18) return planned.length > 1 ? exchange(bench, visit) : -1
  return crossTails(bench)
}

/** A first plan: visits by the end of their windows, each at the cheapest of some tries. */
function construct(decoder: Decoder, bench: MoveBench, current: LinkedDraft): void {
  const { model, draft: candidate } = bench
  const close = (v: number): number => Math.max(...(model.problem.visits[v]?.windows.map((window) => window.to) ?? []), 0)
  const byClose = model.problem.visits.map((_, v) => v).sort((a, b) => close(a) - close(b) || a - b)
  const trial = newDraft(model)
  for (const visit of byClose) {
    trial.total = Number.POSITIVE_INFINITY
    for (let i = 0; i < 40; i++) {
      copyDraft(current, candidate)
      if (relocate(bench, visit, true) < 0) continue
      const total = decode(decoder, candidate, 0, Math.min(trial.total, current.total), false)
      if (total >= trial.total) continue
      copyDraft(candidate, trial)
      trial.total = total
    }
    if (trial.total === Number.POSITIVE_INFINITY) continue
    copyDraft(trial, current)
    keepDraft(decoder, current, 0)
  }
  Object.assign(bench, listVisits(model, current))
}

/** Heat at which a step as dear as a usual drive is often taken. */
function startingHeat(model: LinkedModel): number {
  const { problem, distances } = model
  const sum = distances.reduce((total, distance) => total + distance, 0)
  return problem.prices.distance * (sum / Math.max(1, distances.length)) + 1e-6
}
