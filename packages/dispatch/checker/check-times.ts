import type { PlannedDay } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem } from '../problem/problem.ts'
import { type Violation, visitName } from './violation.ts'

/** Ticks of a drive that begins at `leave`. */
function driveAt(problem: RoutingProblem, crew: CrewDay, from: number, to: number, leave: number): number {
  let factor = 1
  for (const rush of crew.rush ?? []) if (rush.from <= leave && leave <= rush.to) factor = rush.factor
  const ticks = problem.durations[from * problem.places + to] as number
  return factor === 1 ? ticks : Math.round(ticks * factor)
}

/** Windows, drives, work and pauses of one day, from the times the plan states. */
export function checkTimes(problem: RoutingProblem, crew: CrewDay, day: PlannedDay, found: Violation[]): void {
  const numbers = [day.start, day.end, ...day.pauses, ...day.visits.flatMap((planned) => [planned.arrival, planned.start, planned.end])]
  if (!numbers.every(Number.isFinite)) {
    found.push({ kind: 'shape', sentence: `${crew.id} has a time that is no number; its times were not checked.` })
    return
  }
  if (day.visits.length === 0) {
    if (day.pauses.length > 0) found.push({ kind: 'pause', crewDay: crew.id, sentence: `${crew.id} has pauses and no visit.` })
    return
  }
  if (day.start < crew.shift.from) {
    found.push({ kind: 'shift', sentence: `${crew.id} leaves at ${day.start}, before its shift begins at ${crew.shift.from}.` })
  }
  if (day.end > crew.latestEnd) {
    found.push({ kind: 'shift', sentence: `${crew.id} is back at ${day.end}, after its latest end at ${crew.latestEnd}.` })
  }
  let free = day.start
  let place = crew.startPlace
  let taken = 0
  const stops = [
    ...day.visits.map((planned) => ({ ...planned, visit: planned.visit, last: false })),
    { visit: -1, arrival: day.end, start: day.end, end: day.end, last: true },
  ]
  for (const stop of stops) {
    const visit = stop.last ? null : (problem.visits[stop.visit] as RoutedVisit)
    const name = visit === null ? `The way back of ${crew.id}` : visitName(problem, stop.visit)
    const to = visit?.place ?? crew.endPlace
    const pausesHere = day.pauses.filter((begin, i) => i >= taken && begin < stop.start).length
    let leave = free
    let arrived: number | null = null
    for (let i = 0; i < pausesHere; i++) {
      const begin = day.pauses[taken] as number
      const pause = crew.pauses[taken]
      taken++
      if (pause === undefined) continue
      // A pause that begins once the crew can have arrived is taken at the site, any other before leaving.
      const there: number = arrived ?? leave + driveAt(problem, crew, place, to, leave)
      if (begin >= there) arrived = begin + pause.ticks
      else {
        if (begin < leave || arrived !== null)
          found.push({ kind: 'pause', crewDay: crew.id, sentence: `A pause of ${crew.id} at ${begin} falls into work or a drive.` })
        leave = Math.max(leave, begin) + pause.ticks
      }
    }
    const earliest: number = leave + driveAt(problem, crew, place, to, leave)
    const onSite = stop.last ? Math.max(earliest, arrived ?? 0) : earliest
    if (stop.arrival < onSite)
      found.push({ kind: 'drive', sentence: `${name} is reached at ${stop.arrival}; the drive takes until ${onSite}.` })
    if (visit !== null) {
      if (stop.start < stop.arrival)
        found.push({ kind: 'drive', sentence: `${name} begins at ${stop.start}, before the crew is there at ${stop.arrival}.` })
      if (arrived !== null && stop.start < arrived) {
        found.push({
          kind: 'pause',
          crewDay: crew.id,
          sentence: `${name} begins at ${stop.start}, within a pause that lasts until ${arrived}.`,
        })
      }
      if (stop.end < stop.start + visit.serviceTicks) {
        found.push({ kind: 'service', sentence: `${name} takes ${visit.serviceTicks}, but is planned from ${stop.start} to ${stop.end}.` })
      }
      const windows = visit.promised ? [] : visit.windows
      if (visit.promised === undefined && !windows.some((window) => window.from <= stop.start && stop.start <= window.to)) {
        found.push({ kind: 'window', sentence: `${name} begins at ${stop.start}, outside all its windows.` })
      }
    }
    free = stop.end
    place = to
  }
  checkPauses(crew, day, found)
}

function checkPauses(crew: CrewDay, day: PlannedDay, found: Violation[]): void {
  if (day.pauses.length > crew.pauses.length) {
    found.push({ kind: 'pause', crewDay: crew.id, sentence: `${crew.id} takes ${day.pauses.length} pauses; it has ${crew.pauses.length}.` })
  }
  crew.pauses.forEach((pause, i) => {
    const begin = day.pauses[i]
    if (begin === undefined) {
      if (day.end > pause.start.to) {
        found.push({
          kind: 'pause',
          crewDay: crew.id,
          sentence: `${crew.id} is owed a pause that begins by ${pause.start.to} and has none.`,
        })
      }
    } else if (begin < pause.start.from || begin > pause.start.to) {
      const span = `${pause.start.from} to ${pause.start.to}`
      found.push({ kind: 'pause', crewDay: crew.id, sentence: `${crew.id} pauses at ${begin}; the pause may begin from ${span}.` })
    } else if (day.visits.some((planned) => planned.start < begin + pause.ticks && begin < planned.end)) {
      found.push({ kind: 'pause', crewDay: crew.id, sentence: `${crew.id} pauses at ${begin} in the middle of a visit.` })
    }
  })
}
