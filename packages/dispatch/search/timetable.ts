import type { Objective, PlannedDay, PlannedVisit, RoutePlan, Sequences } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem, Span } from '../problem/problem.ts'
import { latePrice } from './day-tables.ts'
import { lag, notBefore } from './lag.ts'

/**
 * Orders as a plan: each crew leaves at the beginning of its shift, works as early as it can and pauses as late as it may (at once, where it would wait anyway).
 * `fits` is false when someone comes too late somewhere; the times are then those of coming too late, which the checker names.
 */
export function timetable(problem: RoutingProblem, sequences: Sequences): { plan: RoutePlan; fits: boolean } {
  const planned = new Set<number>()
  const days: PlannedDay[] = []
  const objective = { driving: 0, overtime: 0, reserve: 0, lateness: 0, fairness: 0, preferences: 0, sending: 0, leftOut: 0 }
  let fits = true
  problem.crewDays.forEach((crew, r) => {
    const sequence = sequences[r] ?? []
    if (sequence.length === 0) {
      days.push({ start: crew.shift.from, end: crew.shift.from, visits: [], pauses: [] })
      return
    }
    for (const v of sequence) planned.add(v)
    const day = timeDay(problem, crew, sequence)
    fits &&= day.fits
    days.push(day.planned)
    objective.driving += day.driving
    objective.overtime += Math.max(0, day.planned.end - crew.shift.to) * crew.overtimePrice
    objective.fairness += Math.max(0, day.busy - (crew.fairShareTicks ?? Number.MAX_VALUE)) * (crew.unfairPrice ?? 0)
    if (crew.reserve) {
      const end = day.planned.end + day.behind + crew.reserve.deviations * Math.sqrt(day.variance)
      objective.reserve += Math.max(0, end - crew.reserve.by) * crew.reserve.price
    }
    objective.sending += crew.sendPrice
    for (const { visit: v, start } of day.planned.visits) {
      const visit = problem.visits[v] as RoutedVisit
      if (visit.stands?.crewDay === r && visit.stands.start !== start) objective.preferences += visit.stands.price
      objective.lateness += latePrice(visit, crew)
      for (const dislike of visit.dislikes ?? []) if (dislike.crewDay === r) objective.preferences += dislike.price
    }
  })
  const leftOut = problem.visits.flatMap((_, v) => (planned.has(v) ? [] : [v]))
  for (const v of leftOut) objective.leftOut += problem.visits[v]?.leaveOutPrice ?? 0
  return { plan: { days, leftOut, objective: withTotal(objective) }, fits }
}

function withTotal(parts: Omit<Objective, 'total'>): Objective {
  const { driving, overtime, reserve, lateness, fairness, preferences, sending, leftOut } = parts
  return { ...parts, total: driving + overtime + reserve + lateness + fairness + preferences + sending + leftOut }
}

interface TimedDay {
  planned: PlannedDay
  fits: boolean
  driving: number
  busy: number
  /** By how much the end comes later than planned in the mean, and its variance. */
  behind: number
  variance: number
}

function timeDay(problem: RoutingProblem, crew: CrewDay, sequence: readonly number[]): TimedDay {
  const visits: PlannedVisit[] = []
  const pauses: number[] = []
  let t = crew.shift.from
  let place = crew.startPlace
  let fits = true
  let driving = 0
  let busy = 0
  let behind = 0
  let variance = 0
  const driveVariance = (crew.reserve?.driveSpread ?? 0) ** 2
  for (let i = 0; i <= sequence.length; i++) {
    const visit = i < sequence.length ? (problem.visits[sequence[i] as number] as RoutedVisit) : null
    const to = visit?.place ?? crew.endPlace
    const ticks = problem.durations[place * problem.places + to] as number
    let drive = driveTicks(crew, t, ticks)
    const windows = visit === null ? [] : windowsOn(visit, crew)
    let arrival = t + drive
    let ready = arrival
    for (let pause = crew.pauses[pauses.length]; pause !== undefined; pause = crew.pauses[pauses.length]) {
      const begin = visit === null ? ready : beginIn(windows, ready)
      const onArrival = Math.max(ready, pause.start.from)
      const free = onArrival <= pause.start.to && onArrival + pause.ticks <= begin
      if (!free && begin + (visit?.serviceTicks ?? 0) <= pause.start.to) break
      if (onArrival <= pause.start.to) {
        pauses.push(onArrival)
        ready = onArrival + pause.ticks
      } else {
        const before = Math.max(t, pause.start.from)
        if (before > pause.start.to) fits = false
        pauses.push(before)
        t = before + pause.ticks
        drive = driveTicks(crew, t, ticks)
        arrival = t + drive
        ready = arrival
      }
    }
    const leg = place * problem.places + to
    driving += (problem.distances[leg] as number) * crew.distancePrice + ticks * crew.drivePrice
    busy += drive + (visit?.serviceTicks ?? 0)
    variance += drive * drive * driveVariance
    if (visit === null) {
      t = ready
      // A day that ends late drives home later: into the rush hour, where one lies there.
      if (crew.reserve) behind += Math.max(0, driveTicks(crew, crew.reserve.by - ticks, ticks) - drive)
    } else {
      const start = beginIn(windows, ready)
      if (start > (windows.at(-1)?.to ?? Number.NEGATIVE_INFINITY)) fits = false
      if (crew.reserve) {
        notBefore(ready - start + behind, variance)
        behind = lag.mean + (visit.lasts?.mean ?? visit.serviceTicks) - visit.serviceTicks
        variance = lag.variance + (visit.lasts?.variance ?? 0)
      }
      t = start + visit.serviceTicks
      visits.push({ visit: sequence[i] as number, arrival, start, end: t })
    }
    place = to
  }
  if (t > crew.latestEnd) fits = false
  return { planned: { start: crew.shift.from, end: t, visits, pauses }, fits, driving, busy, behind, variance }
}

function driveTicks(crew: CrewDay, t: number, ticks: number): number {
  const rush = crew.rush?.findLast((span) => t >= span.from && t <= span.to)
  return rush === undefined ? ticks : Math.round(ticks * rush.factor)
}

/** A visit's windows that meet the crew-day, in order; the promised one alone when there is one. */
function windowsOn(visit: RoutedVisit, crew: CrewDay): readonly Span[] {
  const windows = visit.promised ? [visit.promised.start] : visit.windows
  return windows.filter((window) => window.from <= crew.latestEnd && window.to >= crew.shift.from).sort((a, b) => a.from - b.from)
}

function beginIn(windows: readonly Span[], ready: number): number {
  const window = windows.find((span) => span.to >= ready)
  return window === undefined ? ready : Math.max(ready, window.from)
}
