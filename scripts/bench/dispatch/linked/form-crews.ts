import type { Board, BoardDay, BoardJob, WallSpan } from '@almanac/dispatch/propose/board'
import { type BoardClock, boardClock, dayIndex, toTicks, toWall } from '@almanac/dispatch/propose/board-clock'
import { jobWindows } from '@almanac/dispatch/propose/build-problem'
import { type Saying, sayDay, sayList, sayTime } from '@almanac/dispatch/propose/say'
import type { TravelTable } from '@almanac/dispatch/travel/travel-table'
import { checkLinkedPlan } from './check-linked-plan.ts'
import { linkedFaults } from './linked-faults.ts'
import type { LinkedPart, LinkedPlan, LinkedProblem, LinkedVisit } from './linked-problem.ts'
import { type LinkedPlanner, startLinkedPlanning } from './plan-linked.ts'

/** One person on one day, before anybody is put with anybody. Times are minutes on the wall clock. */
export interface PersonDay {
  readonly id: string
  readonly label: string
  readonly date: string
  readonly skills: readonly string[]
  readonly shift: WallSpan
  readonly latestEnd: number
  readonly breaks: readonly (WallSpan & { readonly minutes: number })[]
  readonly startPlace: string
  readonly endPlace: string
}

/** Days, people and jobs for which crews are to be formed. Each person drives alone; vehicles and loads are not looked at. */
export interface CrewsWanted extends Saying {
  readonly days: readonly BoardDay[]
  readonly people: readonly PersonDay[]
  readonly jobs: readonly BoardJob[]
  readonly travel: TravelTable
  readonly prices: Pick<Board['prices'], 'perDriveHour' | 'perMile' | 'overtimePerHour' | 'leaveOut'>
}

/** A job with the people who do it, all there from its start. */
export interface FormedCrew {
  readonly jobId: string
  readonly date: string
  readonly startMinute: number
  readonly endMinute: number
  readonly personDayIds: readonly string[]
  readonly sentence: string
}

export interface CrewsFormed {
  /** In order of day and time. */
  readonly crews: readonly FormedCrew[]
  readonly waiting: readonly string[]
  /** What the separate checker says against it; empty unless something is wrong. */
  readonly violations: readonly string[]
  readonly notes: readonly string[]
}

export interface FormingCrews {
  readonly improve: LinkedPlanner['improve']
  crews(): CrewsFormed
}

/** Several skills that one person must have at once go under one name. */
const BOTH = ' & '

/**
 * Chooses who works with whom, job by job, so that people meet where two are needed and part where one is enough. A job's skills are shared out over its people, one each, what is
 * left to the last. The same input, seed and iterations give the same crews. Answers faults as sentences.
 */
export function startFormingCrews(wanted: CrewsWanted, how: { seed: number }): FormingCrews | { faults: string[] } {
  const clock = boardClock(wanted.days)
  const place = new Map(wanted.travel.ids.map((id, i) => [id, i]))
  const astray = wanted.people.filter(
    (person) => dayIndex(clock, person.date) < 0 || !place.has(person.startPlace) || !place.has(person.endPlace),
  )
  if (astray.length > 0) return { faults: astray.map((person) => `${person.label} works on a day or from a place that is not given.`) }
  const home = place.get(wanted.people[0]?.startPlace ?? '') ?? 0
  const reachable = (job: BoardJob): boolean => {
    const at = place.get(job.place ?? '')
    return at !== undefined && (wanted.travel.seconds[home * place.size + at] as number) >= 0
  }
  const jobs = wanted.jobs.filter(reachable)
  const problem = toProblem(wanted, clock, jobs, place)
  const faults = linkedFaults(problem)
  if (faults.length > 0) return { faults }
  const planner = startLinkedPlanning(problem, how)
  const lost = wanted.jobs.filter((job) => !reachable(job))
  const notes = lost.map((job) => `Drive to ${job.label} unknown: set its pin on the map, then it can be planned.`)
  return {
    improve: planner.improve,
    crews: () =>
      toCrews(
        wanted,
        clock,
        jobs,
        problem,
        planner.best(),
        lost.map((job) => job.id),
        notes,
      ),
  }
}

function toProblem(wanted: CrewsWanted, clock: BoardClock, jobs: readonly BoardJob[], place: ReadonlyMap<string, number>): LinkedProblem {
  const { travel, prices } = wanted
  const known = (amount: number): number => Math.max(0, amount)
  const needs = jobs.map(shareSkills)
  const combined = new Set(needs.flat().flatMap(({ skill }) => (skill?.includes(BOTH) ? [skill] : [])))
  const breaks = wanted.people.flatMap((person): LinkedVisit[] => {
    const d = dayIndex(clock, person.date)
    return person.breaks.map(({ from, to, minutes }, i) => ({
      id: `break ${i + 1} of ${person.label}`,
      place: null,
      windows: [{ from: toTicks(clock, d, from), to: toTicks(clock, d, to) }],
      needs: [{ skill: `break of ${person.id}`, ticks: minutes * 60 }],
    }))
  })
  return {
    visits: [
      ...jobs.map((job, j): LinkedVisit => {
        const first = job.earliest === undefined ? 0 : clock.days.findIndex((day) => day.date >= (job.earliest as string))
        const opens = first < 0 ? clock.end : (clock.starts[first] as number)
        return {
          id: job.label,
          place: place.get(job.place ?? '') as number,
          windows: jobWindows(clock, job).flatMap((window) =>
            window.to < opens ? [] : [{ from: Math.max(opens, window.from), to: window.to }],
          ),
          needs: needs[j] as LinkedVisit['needs'],
          ...(job.people > 1 ? { link: { kind: 'together' } as const } : {}),
          leaveOutPrice: job.leaveOutPrice ?? prices.leaveOut,
        }
      }),
      ...breaks,
    ],
    people: wanted.people.map((person) => {
      const d = dayIndex(clock, person.date)
      const both = [...combined].filter((name) => name.split(BOTH).every((skill) => person.skills.includes(skill)))
      return {
        id: person.label,
        skills: [...person.skills, ...both, `break of ${person.id}`],
        startPlace: place.get(person.startPlace) as number,
        endPlace: place.get(person.endPlace) as number,
        shift: { from: toTicks(clock, d, person.shift.from), to: toTicks(clock, d, person.shift.to) },
        latestEnd: toTicks(clock, d, person.latestEnd),
        overtimePrice: prices.overtimePerHour / 3600,
      }
    }),
    places: travel.ids.length,
    durations: Array.from(travel.seconds, known),
    // Priced leg by leg, so that road and time count at once.
    distances: Array.from(
      travel.seconds,
      (seconds, i) => (known(seconds) * prices.perDriveHour) / 3600 + known(travel.miles[i] as number) * prices.perMile,
    ),
    prices: { distance: 1, lateTick: 0, mostLate: 0 },
    lateness: 'refused',
  }
}

function shareSkills(job: BoardJob): { skill: string | null; ticks: number }[] {
  return Array.from({ length: job.people }, (_, n) => {
    const mine = n === job.people - 1 ? job.skills.slice(n) : job.skills.slice(n, n + 1)
    return { skill: mine.length === 0 ? null : mine.join(BOTH), ticks: job.minutes * 60 }
  })
}

function toCrews(
  wanted: CrewsWanted,
  clock: BoardClock,
  jobs: readonly BoardJob[],
  problem: LinkedProblem,
  plan: LinkedPlan,
  lost: readonly string[],
  notes: readonly string[],
): CrewsFormed {
  const crews = jobs.flatMap((job, v): (FormedCrew & { at: number })[] => {
    const doing = wanted.people.flatMap((person, p) =>
      (plan.people[p] ?? []).flatMap((part): { person: PersonDay; part: LinkedPart }[] => (part.visit === v ? [{ person, part }] : [])),
    )
    const first = doing[0]
    if (first === undefined) return []
    const { date } = first.person
    const startMinute = toWall(clock, dayIndex(clock, date), first.part.start)
    const sentence = `${job.label}: ${sayList(doing.map(({ person }) => person.label))}, ${sayDay(date, wanted)}, ${sayTime(startMinute, wanted)}.`
    const endMinute = toWall(clock, dayIndex(clock, date), first.part.end)
    return [
      { jobId: job.id, date, startMinute, endMinute, personDayIds: doing.map(({ person }) => person.id), sentence, at: first.part.start },
    ]
  })
  const done = new Set(crews.map((crew) => crew.jobId))
  return {
    crews: crews.sort((a, b) => a.at - b.at || a.jobId.localeCompare(b.jobId)).map(({ at: _, ...crew }) => crew),
    waiting: [...jobs.filter((job) => !done.has(job.id)).map((job) => job.id), ...lost],
    violations: checkLinkedPlan(problem, plan).map((violation) => violation.sentence),
    notes,
  }
}
