import { formatMiles } from '@almanac/units/distance'
import { formatDuration } from '@almanac/units/format-clock'
import { endLikely, normalBelow } from '../checker/end-likely.ts'
import type { Objective, RoutePlan } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit } from '../problem/problem.ts'
import { type Built, shiftEnd } from './build-problem.ts'
import type { Saying } from './say.ts'

/** What a plan comes to, in what a dispatcher counts. Minutes of driving are the vehicles'; those of overtime the crews'. */
export interface Breakdown {
  readonly driveMinutes: number
  readonly miles: number
  readonly overtimeMinutes: number
  readonly lateDays: number
  readonly planned: number
  readonly waiting: number
  readonly sheetsOut: number
  /** How many of the days can be expected to end late; null where nothing is known of how much lengths vary. */
  readonly lateEnds: number | null
  /** Minor units; its `preferences` is the price of disturbance. */
  readonly price: Objective
}

export function breakDown(built: Built, plan: RoutePlan): Breakdown {
  const { problem } = built
  let driveTicks = 0
  let miles = 0
  let overtime = 0
  let lateDays = 0
  let planned = 0
  let lateEnds: number | null = null
  plan.days.forEach((day, r) => {
    const crew = problem.crewDays[r] as CrewDay
    if (day.visits.length === 0) return
    let at = crew.startPlace
    const drive = (to: number): void => {
      driveTicks += problem.durations[at * problem.places + to] as number
      miles += problem.distances[at * problem.places + to] as number
      at = to
    }
    for (const { visit: v } of day.visits) {
      const visit = problem.visits[v] as RoutedVisit
      drive(visit.place)
      planned++
      if (visit.dueDay !== undefined) lateDays += Math.max(0, crew.day - visit.dueDay)
    }
    drive(crew.endPlace)
    const end = endLikely(problem, crew, day)
    if (crew.reserve && end) lateEnds = (lateEnds ?? 0) + normalBelow((end.mean - crew.reserve.by) / Math.max(1, Math.sqrt(end.variance)))
    // Time in hand that is used up is no overtime.
    overtime += Math.max(0, day.end - shiftEnd(built, r))
  })
  return {
    driveMinutes: driveTicks / 60,
    miles,
    overtimeMinutes: overtime / 60,
    lateDays,
    planned,
    waiting: built.board.jobs.length - planned,
    sheetsOut: plan.days.filter((day) => day.visits.length > 0).length,
    lateEnds,
    price: plan.objective,
  }
}

/** What changes from one plan to the other, a sentence a part; only parts that change. */
export function sayChange(before: Breakdown, after: Breakdown, saying: Saying): string[] {
  const said: string[] = []
  const say = (name: string, verbs: readonly [string, string], a: number, b: number, words: (n: number) => string): void => {
    if (words(a) !== words(b)) said.push(`${name} ${verbs[b > a ? 0 : 1]} from ${words(a)} to ${words(b)}.`)
  }
  const one = ['rises', 'falls'] as const
  const many = ['rise', 'fall'] as const
  const count = (n: number): string => String(Math.round(n))
  say('Jobs on the sheets', many, before.planned, after.planned, count)
  say('Driving', one, before.driveMinutes, after.driveMinutes, (minutes) => formatDuration(minutes, saying))
  say('The way', one, before.miles, after.miles, (miles) => formatMiles(miles, saying))
  say('Overtime', one, before.overtimeMinutes, after.overtimeMinutes, (minutes) => formatDuration(minutes, saying))
  say('Days after due', many, before.lateDays, after.lateDays, count)
  say('Crews sent out', many, before.sheetsOut, after.sheetsOut, count)
  return said
}

/** What the same days would come to, planned as long as usual: by this the price of ending on time is judged. */
export function sayUsual(usual: Breakdown, saying: Saying): string {
  const { driveMinutes, waiting, lateEnds, sheetsOut } = usual
  const jobs = waiting === 1 ? 'one job waiting' : `${waiting} jobs waiting`
  const late = `about ${Math.round(lateEnds ?? 0)} of ${sheetsOut} days ending late`
  return `Planned as long as usual, it would be ${formatDuration(driveMinutes, saying)} of driving, ${jobs} and ${late}.`
}
