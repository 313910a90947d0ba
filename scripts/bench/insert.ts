import os from 'node:os'
import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import type { Sequences } from '@almanac/dispatch/problem/plan'
import type { RoutingProblem } from '@almanac/dispatch/problem/problem'
import { startPlanning } from '@almanac/dispatch/search/planner'
import { timetable } from '@almanac/dispatch/search/timetable'
import { randomCrewDays } from '../../tests/support/random-crew-days.ts'
import { placesForVisit, withVisit } from './dispatch/insert-visit.ts'

type Bench = { args: string[]; say: (line: string) => void }

const WEEKS = 5
const ADDED = 20

/** The week with its last visits not there yet: the first 100 are planned, the others are added one at a time, each to the same finished plan. */
function finishedWeek(seed: number): { problem: RoutingProblem; planned: RoutingProblem; orders: number[][] } {
  const whole = randomCrewDays(seed, { visits: 100 + ADDED, crews: 6, days: 5, optional: 1 })
  const planned = { ...whole, visits: whole.visits.slice(0, 100) }
  const planner = startPlanning(planned, { seed })
  planner.improve(100)
  return { problem: whole, planned, orders: planner.best().days.map((day) => day.visits.map((visit) => visit.visit)) }
}

function others(orders: Sequences, added: number): string {
  return JSON.stringify(orders.map((order) => order.filter((v) => v !== added)))
}

/**
 * One job more for a finished plan of 100 visits, six crews and five days: finding its best place and making and checking the new plan, nobody else moved. Beside it what one
 * iteration of the planner takes from there, if others may be moved. Milliseconds by the wall clock.
 */
export default async function insert({ say }: Bench) {
  const kept: number[] = []
  const rearranged: number[] = []
  let moved = 0
  let nowhere = 0
  for (let seed = 1; seed <= WEEKS; seed++) {
    const { problem, planned, orders } = finishedWeek(seed)
    for (let i = 0; i < ADDED; i++) {
      const week = { ...planned, visits: [...planned.visits, problem.visits[100 + i] as RoutingProblem['visits'][number]] }
      const began = performance.now()
      const [place] = placesForVisit(week, orders, 100)
      if (place === undefined) {
        nowhere++
        continue
      }
      const after = withVisit(orders, 100, place)
      const { plan } = timetable(week, after)
      const wrong = checkPlan(week, plan).filter((violation) => !/left out/.test(violation.sentence))
      kept.push(performance.now() - began)
      if (wrong.length > 0) throw new Error(`The checker refuses the plan with the job added: ${wrong[0]?.sentence}`)
      if (others(after, 100) !== others(orders, 100)) moved++
      const again = performance.now()
      const planner = startPlanning(week, { seed, from: after })
      planner.improve(1)
      planner.best()
      rearranged.push(performance.now() - again)
    }
  }
  const at = (times: number[], share: number) =>
    Number((times.toSorted((a, b) => a - b)[Math.floor(share * (times.length - 1))] ?? 0).toFixed(2))
  const figures = {
    added: kept.length,
    nowhere,
    moved,
    medianMs: at(kept, 0.5),
    p95Ms: at(kept, 0.95),
    rearrangedMedianMs: at(rearranged, 0.5),
    load: os.loadavg()[0],
  }
  say(
    `${figures.added} jobs added one at a time: median ${figures.medianMs} ms, 95 in 100 within ${figures.p95Ms} ms; ${moved} moved another visit.`,
  )
  say(`With others free to move, one iteration: median ${figures.rearrangedMedianMs} ms. Load of the machine ${figures.load?.toFixed(1)}.`)
  return figures
}
