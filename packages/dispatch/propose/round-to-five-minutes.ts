import type { RoutePlan, Sequences } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem, Span } from '../problem/problem.ts'
import { timetable } from '../search/timetable.ts'
import { dayIndex, toTicks } from './board-clock.ts'
import type { Built } from './build-problem.ts'
import { newFaults, planFaults } from './plan-faults.ts'

/** Jobs whose time was shown to a person, with the minute of the day. */
type Shown = ReadonlyMap<string, number>

/** Nobody is told to come at 10:23. Ticks. */
const STEP = 300

/**
 * The same orders at times that people tell each other: every visit begins on the five minutes, or at the time that stands on its sheet already, as early as that
 * allows. Where a day has no room for it, that day keeps its times. The checker looks at the result: what it would hold against it and not against the plan as it
 * was stays out. Jobs in `shown` begin at that minute of their sheet's day.
 */
export function roundToFiveMinutes(built: Built, plan: RoutePlan, shown: Shown = new Map()): RoutePlan {
  const orders = plan.days.map((day) => day.visits.map(({ visit }) => visit))
  const standing = planFaults(built, plan)
  const isFine = (candidate: RoutePlan): boolean => newFaults(standing, planFaults(built, candidate)).length === 0
  const all = onGrid(built, orders, () => true, shown)
  if (isFine(all)) return all
  const fitting = new Set(
    orders.flatMap((order, r) => {
      const alone = orders.map((other, q) => (q === r ? other : []))
      return order.length > 0 && isDayFine(built, alone, r, shown) ? [r] : []
    }),
  )
  const some = onGrid(built, orders, (r) => fitting.has(r), shown)
  return isFine(some) ? some : plan
}

function isDayFine(built: Built, alone: Sequences, r: number, shown: Shown): boolean {
  const before = planFaults(built, timetable(built.problem, alone).plan)
  return (
    newFaults(
      before,
      planFaults(
        built,
        onGrid(built, alone, (q) => q === r, shown),
      ),
    ).length === 0
  )
}

/** The timetable of the orders where the crew-days chosen may begin visits at points of the grid only. */
function onGrid(built: Built, orders: Sequences, isChosen: (crewDay: number) => boolean, shown: Shown): RoutePlan {
  const { problem } = built
  const visits = [...problem.visits]
  orders.forEach((order, r) => {
    if (!isChosen(r)) return
    for (const v of order) {
      const { promised, ...visit } = problem.visits[v] as RoutedVisit
      const at = shownStart(built, r, v, shown)
      visits[v] = {
        ...visit,
        windows:
          at !== undefined
            ? [{ from: at, to: at }]
            : points(problem.crewDays[r] as CrewDay, promised ? [promised.start] : visit.windows, writtenStart(built, r, v)),
      }
    }
  })
  const gridded: RoutingProblem = { ...problem, visits }
  return timetable(gridded, orders).plan
}

/** The time that a proposal shows, in ticks. */
function shownStart(built: Built, r: number, v: number, shown: Shown): number | undefined {
  const [sheet, minute] = [built.board.sheets[r], shown.get(built.jobs[v]?.id ?? '')]
  return sheet === undefined || minute === undefined ? undefined : toTicks(built.clock, dayIndex(built.clock, sheet.date), minute)
}

/** The time that stands on the sheet, in ticks, if the visit stands there. */
function writtenStart(built: Built, r: number, v: number): number | undefined {
  const sheet = built.board.sheets[r]
  const minute = sheet?.visits.find(({ jobId }) => jobId === built.jobs[v]?.id)?.startMinute
  return sheet === undefined || minute === undefined ? undefined : toTicks(built.clock, dayIndex(built.clock, sheet.date), minute)
}

/** The windows of a visit on a crew-day as single moments; a window without any stays as it is. */
function points(crew: CrewDay, windows: readonly Span[], written: number | undefined): Span[] {
  return windows
    .filter((window) => window.from <= crew.latestEnd && window.to >= crew.shift.from)
    .flatMap((window) => {
      const [from, to] = [Math.max(window.from, crew.shift.from), Math.min(window.to, crew.latestEnd)]
      const found = written !== undefined && written >= from && written <= to ? [written] : []
      for (let at = Math.ceil(from / STEP) * STEP; at <= to; at += STEP) found.push(at)
      return found.length === 0 ? [window] : found.map((at) => ({ from: at, to: at }))
    })
    .sort((a, b) => a.from - b.from)
}
