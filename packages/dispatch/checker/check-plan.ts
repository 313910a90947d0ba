import type { PlannedDay, RoutePlan } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem } from '../problem/problem.ts'
import { checkLoad } from './check-load.ts'
import { checkPrices } from './check-prices.ts'
import { checkTimes } from './check-times.ts'
import { type Violation, visitName } from './violation.ts'

/**
 * Everything that is wrong with a plan, as sentences; none when it may be saved. Works from the plan's own times and the problem alone, and shares nothing with the planner but
 * the types.
 */
export function checkPlan(problem: RoutingProblem, plan: RoutePlan): Violation[] {
  const found: Violation[] = []
  if (plan.days.length !== problem.crewDays.length) {
    const sentence = `The plan has ${plan.days.length} day sheets for ${problem.crewDays.length} crew-days; nothing else of it was checked.`
    return [{ kind: 'shape', sentence }]
  }
  checkEachOnce(problem, plan, found)
  plan.days.forEach((day, r) => {
    const crew = problem.crewDays[r] as CrewDay
    if (day.visits.some((planned) => problem.visits[planned.visit] === undefined)) return
    checkFitness(problem, crew, r, day, found)
    checkTimes(problem, crew, day, found)
    checkLoad(problem, crew, day, found)
  })
  if (found.every((violation) => violation.kind !== 'shape')) checkPrices(problem, plan, found)
  return found
}

/** Each visit once on a day sheet or once among those left out; what must be planned or was promised is not left out. */
function checkEachOnce(problem: RoutingProblem, plan: RoutePlan, found: Violation[]): void {
  const times = problem.visits.map(() => 0)
  const count = (v: number): void => {
    if (times[v] === undefined)
      found.push({ kind: 'shape', sentence: `The plan names visit number ${v}, which the problem does not have.` })
    else times[v]++
  }
  for (const day of plan.days) for (const planned of day.visits) count(planned.visit)
  for (const v of plan.leftOut) count(v)
  times.forEach((n, v) => {
    const name = visitName(problem, v)
    if (n === 0) found.push({ kind: 'missing', sentence: `${name} is neither planned nor listed as left out.` })
    if (n > 1) found.push({ kind: 'twice', sentence: `${name} stands in the plan ${n} times.` })
  })
  for (const v of plan.leftOut) {
    const visit = problem.visits[v]
    if (visit?.promised) found.push({ kind: 'promise', sentence: `${visitName(problem, v)} has been promised and is left out.` })
    else if (visit && visit.leaveOutPrice === undefined) {
      found.push({ kind: 'left-out', sentence: `${visitName(problem, v)} must be planned and is left out.` })
    }
  }
}

/** May this crew do these visits on this day at all? */
function checkFitness(problem: RoutingProblem, crew: CrewDay, r: number, day: PlannedDay, found: Violation[]): void {
  for (const planned of day.visits) {
    const visit = problem.visits[planned.visit] as RoutedVisit
    const name = visitName(problem, planned.visit)
    for (const skill of visit.skills) {
      if (!crew.skills.includes(skill)) found.push({ kind: 'skill', sentence: `${name} needs “${skill}”, which ${crew.id} does not have.` })
    }
    if (crew.people < visit.people) {
      found.push({ kind: 'people', sentence: `${name} needs ${visit.people} people; ${crew.id} is ${crew.people}.` })
    }
    if (visit.allowedCrewDays && !visit.allowedCrewDays.includes(r)) {
      found.push({ kind: 'not-allowed', sentence: `${name} may not be done by ${crew.id}.` })
    }
    if (visit.releaseDay !== undefined && visit.releaseDay > crew.day) {
      found.push({ kind: 'release', sentence: `${name} may not be done before day ${visit.releaseDay}; ${crew.id} is on day ${crew.day}.` })
    }
    const promised = visit.promised
    if (promised && promised.crewDay !== r) {
      const other = problem.crewDays[promised.crewDay]?.id ?? `crew-day ${promised.crewDay}`
      found.push({ kind: 'promise', sentence: `${name} has been promised with ${other} and stands with ${crew.id}.` })
    } else if (promised && (planned.start < promised.start.from || planned.start > promised.start.to)) {
      const span = `${promised.start.from} to ${promised.start.to}`
      found.push({ kind: 'promise', sentence: `${name} begins at ${planned.start}, but was promised for ${span}.` })
    }
  }
}
