import type { PlannedDay } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem } from '../problem/problem.ts'

/** Below so many standard deviations: the normal distribution by its series (Abramowitz and Stegun, 26.2.11), summed to the last digit. */
export function normalBelow(at: number): number {
  if (Math.abs(at) > 8) return at > 0 ? 1 : 0
  let term = at
  let sum = at
  for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum) && k < 400; k += 2) {
    term *= (at * at) / k
    sum += term
  }
  return 0.5 + (sum * Math.exp((-at * at) / 2)) / Math.sqrt(2 * Math.PI)
}

/**
 * When a day ends in truth, worked out from the times that the plan states: its mean in ticks and its variance. No visit begins before its time, lengths and drives vary.
 * Null for a crew-day without a reserve, or without visits.
 */
export function endLikely(problem: RoutingProblem, crew: CrewDay, day: PlannedDay): { mean: number; variance: number } | null {
  const { reserve } = crew
  if (!reserve || day.visits.length === 0) return null
  // When the crew is free for the next drive, as planned, and in truth: mean and variance.
  let [free, mean, variance] = [day.start, day.start, 0]
  const go = (arrival: number) => {
    const leave = day.pauses.reduce(
      (last, begin, n) => (begin >= free && begin < arrival ? Math.max(last, begin + (crew.pauses[n]?.ticks ?? 0)) : last),
      free,
    )
    variance += (reserve.driveSpread * (arrival - leave)) ** 2
    return arrival - leave
  }
  for (const { visit: v, arrival, start, end } of day.visits) {
    const visit = problem.visits[v] as RoutedVisit
    go(arrival)
    const paused = day.pauses.map((begin, n) => (begin >= arrival && begin < start ? begin + (crew.pauses[n]?.ticks ?? 0) : arrival))
    const after = mean + Math.max(arrival, ...paused) - free - start
    const deviation = Math.sqrt(variance)
    const at = deviation > 0 ? after / deviation : after > 0 ? 9 : -9
    const [below, density] = [normalBelow(at), Math.exp((-at * at) / 2) / Math.sqrt(2 * Math.PI)]
    const waits = after * below + deviation * density
    variance = Math.max(0, (after ** 2 + variance) * below + after * deviation * density - waits ** 2) + (visit.lasts?.variance ?? 0)
    mean = start + waits + (visit.lasts?.mean ?? visit.serviceTicks)
    free = end
  }
  const driven = go(day.end)
  // Whoever is late drives home at the end of the day, in whatever rush there is then.
  const last = problem.visits[day.visits.at(-1)?.visit ?? -1]?.place ?? crew.startPlace
  const usual = problem.durations[last * problem.places + crew.endPlace] as number
  const leaves = reserve.by - usual
  const rush = (crew.rush ?? []).reduce((factor, one) => (one.from <= leaves && leaves <= one.to ? one.factor : factor), 1)
  const longer = Math.max(0, Math.round(usual * rush) - driven)
  return { mean: mean + day.end - free + longer, variance }
}
