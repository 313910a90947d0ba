import { formatPercent } from '@almanac/units/format-number'
import { checkPlan } from '../checker/check-plan.ts'
import type { PlannedDay, RoutePlan } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit } from '../problem/problem.ts'
import { timeSheet } from '../slots/time-sheet.ts'
import type { Sheet } from './board.ts'
import { dayIndex, toWall } from './board-clock.ts'
import type { Built } from './build-problem.ts'
import { type Saying, sayDay, sayPeople, sayTime } from './say.ts'

/** One thing wrong with a plan, in the dispatcher's words. The same `key` with no larger `amount` in the plan before is nothing new. */
export interface PlanFault {
  readonly key: string
  readonly amount: number
  readonly sentence: string
}

/** Kinds of the checker that are told in plain words below; all others are told in its own. */
const WORDED: ReadonlySet<string> = new Set(['window', 'promise', 'shift', 'load', 'people', 'skill', 'release', 'not-allowed', 'pause'])

/** What the checker holds against a plan, in plain words; empty when it may be saved. The checker decides whether there is anything, this only words it. */
export function planFaults(built: Built, plan: RoutePlan): PlanFault[] {
  const checked = checkPlan(built.problem, plan)
  if (checked.length === 0) return []
  const worded = plan.days.flatMap((day, r) => (day.visits.length === 0 ? [] : sheetFaults(built, day, r)))
  for (const v of plan.leftOut) {
    if (built.problem.visits[v]?.promised === undefined) continue
    worded.push({
      key: `left/${built.jobs[v]?.id}`,
      amount: 0,
      sentence: `${built.jobs[v]?.label} has been promised and is on no sheet.`,
    })
  }
  for (const { crewDay } of checked.filter(({ kind }) => kind === 'pause')) {
    const sheet = built.board.sheets.find((one) => one.id === crewDay)
    if (sheet !== undefined)
      worded.push({ key: `pause/${sheet.id}`, amount: 0, sentence: `${name(sheet, built.board)}: no time for a break.` })
  }
  const raw = checked
    .filter(({ kind }) => worded.length === 0 || !WORDED.has(kind))
    .map(({ sentence }) => ({ key: sentence, amount: 0, sentence }))
  return [...new Map([...worded, ...raw].map((fault) => [fault.key, fault])).values()]
}

/** Sentences of what is wrong now and was not, or not as much, before. */
export function newFaults(before: readonly PlanFault[], after: readonly PlanFault[]): string[] {
  const was = new Map(before.map((fault) => [fault.key, fault.amount]))
  return after.filter((fault) => fault.amount > (was.get(fault.key) ?? -1) + 1e-6).map((fault) => fault.sentence)
}

function name(sheet: Sheet, saying: Saying): string {
  return `${sheet.label} on ${sayDay(sheet.date, saying)}`
}

function sheetFaults(built: Built, day: PlannedDay, r: number): PlanFault[] {
  const { problem, clock, board } = built
  const sheet = board.sheets[r] as Sheet
  const crew = problem.crewDays[r] as CrewDay
  const d = dayIndex(clock, sheet.date)
  const at = (ticks: number): string => sayTime(toWall(clock, d, ticks), built.board)
  const found: PlanFault[] = []
  const say = (kind: string, amount: number, words: string): void =>
    void found.push({ key: `${kind}/${sheet.id}`, amount, sentence: `${name(sheet, built.board)}: ${words}.` })
  for (const { visit: v, start } of day.visits) {
    const visit = problem.visits[v] as RoutedVisit
    const job = built.jobs[v]
    const about = (kind: string): string => `${kind}/${job?.id}`
    const label = job?.label ?? visit.id
    const windows = visit.promised === undefined ? visit.windows : [visit.promised.start]
    const open = windows.filter((window) => window.from <= crew.latestEnd && window.to >= crew.shift.from)
    const closes = Math.max(...open.map((window) => window.to))
    if (visit.promised !== undefined && visit.promised.crewDay !== r)
      say(about('promise'), 0, `${label} has been promised with ${board.sheets[visit.promised.crewDay]?.label ?? 'another crew'}`)
    else if (open.length === 0) say(about('window'), 0, `${label} has no window then`)
    else if (start > closes) say(about('window'), start - closes, `${label} would begin at ${at(start)}, after ${at(closes)}`)
    if (visit.people > crew.people) say(about('people'), 0, `${label} needs ${sayPeople(visit.people)}`)
    for (const skill of visit.skills)
      if (!crew.skills.includes(skill)) say(about(`skill ${skill}`), 0, `${label} needs someone who can do ${skill}`)
    if (visit.releaseDay !== undefined && crew.day < visit.releaseDay)
      say(about('early'), 0, `${label} may not be done before ${sayDay(job?.earliest ?? '', built.board)}`)
    if (visit.allowedCrewDays?.includes(r) === false) say(about('closed'), 0, `${label} cannot be done by a crew that is off`)
  }
  if (day.end > crew.latestEnd) say('end', day.end - crew.latestEnd, `back at ${at(day.end)}, after ${at(crew.latestEnd)}`)
  const { fullest } = timeSheet(
    problem,
    crew,
    day.visits.map(({ visit }) => problem.visits[visit] as RoutedVisit),
  )
  const percent = Number.isFinite(fullest)
    ? `its vehicle would be ${formatPercent(fullest, built.board)} full`
    : 'its vehicle carries nothing'
  if (fullest > 1 + 1e-9) say('load', fullest, percent)
  return found
}
