import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import type { RoutedVisit, RoutingProblem } from '@almanac/dispatch/problem/problem'
import { problemFaults } from '@almanac/dispatch/problem/problem-faults'
import { startPlanning } from '@almanac/dispatch/search/planner'
import { timetable } from '@almanac/dispatch/search/timetable'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { placesForVisit, withVisit } from '../../scripts/bench/dispatch/insert-visit.ts'
import { bestOfAll } from '../support/every-plan.ts'
import { randomCrewDays } from '../support/random-crew-days.ts'

const seed = Number(process.env.FC_SEED ?? 20_260_301)
console.info(`dispatch routes: fast-check seed ${seed} (set FC_SEED to change it)`)
const anySeed = fc.integer({ min: 0, max: 1_000_000 })
const week = fc.record({
  visits: fc.integer({ min: 1, max: 40 }),
  crews: fc.integer({ min: 1, max: 4 }),
  days: fc.integer({ min: 1, max: 4 }),
  optional: fc.constantFrom(0, 0.3, 1),
})
const tiny = { visits: 5, crews: 2, days: 1, optional: 0.6 }
const cents = (total: number) => Math.round(100 * total) / 100

/** Ways to make a problem harder; none may make its optimum cheaper. */
const harder: Record<string, (problem: RoutingProblem) => RoutingProblem> = {
  'a narrower window': (problem) =>
    changed(problem, (visit) => ({
      ...visit,
      windows: visit.windows.map(({ from, to }) => ({ from, to: from + Math.floor((to - from) / 2) })),
    })),
  'fewer windows': (problem) => changed(problem, (visit) => ({ ...visit, windows: visit.windows.slice(0, 1) })),
  'a skill more': (problem) => changed(problem, (visit) => ({ ...visit, skills: ['well water'] })),
  'one crew-day only': (problem) => changed(problem, (visit) => ({ ...visit, allowedCrewDays: [0] })),
  'longer work': (problem) => changed(problem, (visit) => ({ ...visit, serviceTicks: visit.serviceTicks + 1800 })),
  'a smaller vehicle': (problem) => ({
    ...problem,
    crewDays: problem.crewDays.map((crew) => ({ ...crew, capacity: { ft3: 10, lb: 600 } })),
  }),
  'an earlier end': (problem) => ({ ...problem, crewDays: problem.crewDays.map((crew) => ({ ...crew, latestEnd: crew.shift.to })) }),
}

/** All visits may be left out at a price, so that a plan there always is; the first visit without a promise is changed. */
function changed(problem: RoutingProblem, change: (visit: RoutedVisit) => RoutedVisit): RoutingProblem {
  const at = problem.visits.findIndex((visit) => visit.promised === undefined)
  return { ...problem, visits: problem.visits.map((visit, v) => (v === at ? change(visit) : visit)) }
}

describe('every plan', () => {
  it('passes the checker, but for visits that must be planned and find no room', () => {
    fc.assert(
      fc.property(anySeed, week, (from, size) => {
        const problem = randomCrewDays(from, size)
        expect(problemFaults(problem)).toEqual([])
        const planner = startPlanning(problem, { seed: from })
        planner.improve(12)
        const plan = planner.best()
        const wrong = checkPlan(problem, plan).filter(
          (violation) => violation.kind !== 'left-out' && !/promised and is left out/.test(violation.sentence),
        )
        expect(wrong).toEqual([])
      }),
      { seed, numRuns: 60 },
    )
  })

  it('same seed and iterations, same plan', () => {
    fc.assert(
      fc.property(anySeed, week, (from, size) => {
        const problem = randomCrewDays(from, size)
        const [one, other] = [1, 2].map(() => startPlanning(problem, { seed: from }))
        one?.improve(10)
        other?.improve(4)
        other?.improve(6)
        expect(one?.best()).toEqual(other?.best())
      }),
      { seed, numRuns: 15 },
    )
  })

  it('starts from the plan as it stands and never ends worse', () => {
    fc.assert(
      fc.property(anySeed, week, (from, size) => {
        const problem = randomCrewDays(from, { ...size, optional: 1 })
        const first = startPlanning(problem, { seed: 1 })
        first.improve(3)
        const stands = first.best()
        const orders = stands.days.map((day) => day.visits.map((planned) => planned.visit))
        const again = startPlanning(problem, { seed: 2, from: orders })
        again.improve(3)
        expect(again.best().objective.total).toBeLessThanOrEqual(stands.objective.total + 1e-6)
      }),
      { seed, numRuns: 20 },
    )
  })
})

describe('against every plan there is', () => {
  it('the planner finds the optimum of tiny days', () => {
    fc.assert(
      fc.property(anySeed, (from) => {
        const problem = randomCrewDays(from, tiny)
        const optimum = bestOfAll(problem)
        const planner = startPlanning(problem, { seed: 1 })
        planner.improve(60)
        const plan = planner.best()
        if (optimum === null) expect(checkPlan(problem, plan).length).toBeGreaterThan(0)
        else expect(cents(plan.objective.total)).toBe(cents(optimum.objective.total))
      }),
      { seed, numRuns: 25 },
    )
  })

  it('a constraint more never makes the optimum cheaper', () => {
    fc.assert(
      fc.property(anySeed, fc.constantFrom(...Object.keys(harder)), (from, name) => {
        const problem = randomCrewDays(from, { ...tiny, visits: 4, optional: 1 })
        const constrained = (harder[name] as (problem: RoutingProblem) => RoutingProblem)(problem)
        const optimum = bestOfAll(problem)?.objective.total ?? Number.POSITIVE_INFINITY
        const after = bestOfAll(constrained)?.objective.total ?? Number.POSITIVE_INFINITY
        expect(after).toBeGreaterThanOrEqual(optimum - 1e-6)
      }),
      { seed, numRuns: 60 },
    )
  })
})

describe('one visit put into a plan', () => {
  it('moves nobody else, fits, and adds what was said, at the cheapest place there is', () => {
    fc.assert(
      fc.property(anySeed, fc.nat(), (from, pick) => {
        const problem = randomCrewDays(from, { visits: 20, crews: 3, days: 2, optional: 1 })
        const planner = startPlanning(problem, { seed: 1 })
        planner.improve(3)
        const v = pick % 20
        const orders = planner.best().days.map((day) => day.visits.flatMap((planned) => (planned.visit === v ? [] : [planned.visit])))
        const before = timetable(problem, orders).plan.objective
        const leftOutPrice = problem.visits[v]?.leaveOutPrice ?? 0
        const places = placesForVisit(problem, orders, v)
        let cheapest = Number.POSITIVE_INFINITY
        orders.forEach((order, r) => {
          for (let at = 0; at <= order.length; at++) {
            const { plan } = timetable(problem, orders.with(r, order.toSpliced(at, 0, v)))
            const found = places.find((place) => place.crewDay === r && place.position === at)
            const ok = checkPlan(problem, plan).every((violation) => violation.kind === 'left-out' || /left out/.test(violation.sentence))
            expect(found !== undefined).toBe(ok)
            if (!ok || found === undefined) continue
            const added = plan.objective.total - before.total + leftOutPrice
            expect(found.addedPrice).toBeCloseTo(added, 4)
            cheapest = Math.min(cheapest, added)
          }
        })
        if (places[0] === undefined) return
        expect(places[0].addedPrice).toBeCloseTo(cheapest, 4)
        const after = withVisit(orders, v, places[0])
        expect(timetable(problem, after).plan.objective.total).toBeCloseTo(before.total - leftOutPrice + cheapest, 4)
        expect(after.map((order) => order.filter((other) => other !== v))).toEqual(orders)
      }),
      { seed, numRuns: 25 },
    )
  })
})
