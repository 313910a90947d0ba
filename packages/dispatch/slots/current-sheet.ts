import type { CrewDay, RoutedVisit, RoutingProblem } from '../problem/problem.ts'
import { timeSheet } from './time-sheet.ts'

/** A sheet with its present faults allowed, so that one more visit is refused only where it makes them worse. */
export interface CurrentSheet {
  readonly crew: CrewDay
  readonly visits: readonly RoutedVisit[]
  /** It already comes too late somewhere, or is too full. */
  readonly broken: boolean
}

/** Day sheets made by hand come late by some minutes, or by an estimate that changed: who is late now may stay as late, but no later. */
export function currentSheet(problem: RoutingProblem, crew: CrewDay, visits: readonly RoutedVisit[]): CurrentSheet {
  const timed = timeSheet(problem, crew, visits)
  if (timed.fits) return { crew, visits, broken: false }
  const { day, fullest } = timed
  const full = Math.max(1, fullest)
  return {
    crew: {
      ...crew,
      latestEnd: Math.max(crew.latestEnd, day.end),
      capacity: Number.isFinite(full) ? { ft3: crew.capacity.ft3 * full, lb: crew.capacity.lb * full } : crew.capacity,
      pauses: crew.pauses.map((pause, i) => ({
        ...pause,
        start: { from: pause.start.from, to: Math.max(pause.start.to, day.pauses[i] ?? 0) },
      })),
    },
    visits: visits.map((visit, i) => {
      const start = day.visits[i]?.start ?? 0
      const { promised } = visit
      if (promised !== undefined)
        return { ...visit, promised: { ...promised, start: { from: promised.start.from, to: Math.max(promised.start.to, start) } } }
      return { ...visit, windows: [...visit.windows, { from: start, to: start }] }
    }),
    broken: true,
  }
}
