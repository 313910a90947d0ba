import type { PlannedDay } from '../problem/plan.ts'
import type { CrewDay, Load, RoutedVisit, RoutingProblem } from '../problem/problem.ts'
import type { Violation } from './violation.ts'

const DUST = 1e-6

/** What is on board when the crew leaves and after each visit, volume and weight, against what the vehicle may carry. */
export function checkLoad(problem: RoutingProblem, crew: CrewDay, day: PlannedDay, found: Violation[]): void {
  const visits = day.visits.map((planned) => problem.visits[planned.visit] as RoutedVisit)
  for (const [unit, words] of [
    ['ft3', 'ft³'],
    ['lb', 'lb'],
  ] as const) {
    const amount = (load: Load): number => load[unit]
    let onBoard = visits.reduce((sum, visit) => sum + amount(visit.out), 0)
    let most = onBoard
    for (const visit of visits) {
      onBoard += amount(visit.back) - amount(visit.out)
      most = Math.max(most, onBoard)
    }
    if (!(most <= amount(crew.capacity) + DUST)) {
      const may = `the vehicle may carry ${amount(crew.capacity)} ${words}`
      found.push({ kind: 'load', sentence: `${crew.id} carries up to ${Number(most.toFixed(3))} ${words}; ${may}.` })
    }
  }
}
