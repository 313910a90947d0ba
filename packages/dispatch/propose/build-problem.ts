import { dayNumber } from '@almanac/units/calendar/calendar-day'
import type { Sequences } from '../problem/plan.ts'
import type { CrewDay, RoutedVisit, RoutingProblem, Span } from '../problem/problem.ts'
import { problemFaults } from '../problem/problem-faults.ts'
import type { Board, BoardJob, Sheet } from './board.ts'
import { type BoardClock, boardClock, dayIndex, toTicks } from './board-clock.ts'
import { boardFaults } from './board-faults.ts'

/** Nine of ten lie below so many standard deviations (standard normal, Abramowitz and Stegun, table 26.5). */
const NINE_OF_TEN = 1.2816
/** Drives vary by about a seventh of themselves; common practice, no source. */
const DRIVE_SPREAD = 0.15

/** A board as the planner's problem: visit v is job `jobs[v]`, crew-day r is sheet `board.sheets[r]`. */
export interface Built {
  readonly board: Board
  readonly clock: BoardClock
  readonly problem: RoutingProblem
  readonly present: Sequences
  readonly jobs: readonly BoardJob[]
  readonly visitOf: ReadonlyMap<string, number>
  readonly sheetOf: ReadonlyMap<string, number>
  /** Jobs whose drives are unknown; the planner leaves the waiting ones among them alone. */
  readonly unknownDrive: ReadonlySet<string>
  readonly notes: readonly string[]
}

/**
 * Builds the problem. `disturbance` prices moving a placed job to another sheet or time. `planUnknown` takes waiting jobs whose drives are unknown along (for slots, which say so).
 * Unknown legs count nothing; every answer that touches one says that it is unknown.
 */
export function buildProblem(board: Board, how: { disturbance?: boolean; planUnknown?: boolean } = {}): Built | { faults: string[] } {
  const faults = boardFaults(board)
  if (faults.length > 0) return { faults }
  const clock = boardClock(board.days)
  const place = new Map(board.travel.ids.map((id, i) => [id, i]))
  const sheetOf = new Map(board.sheets.map((sheet, r) => [sheet.id, r]))
  const placedOn = new Map(board.sheets.flatMap((sheet, r) => sheet.visits.map(({ jobId }) => [jobId, r] as const)))
  const unknownDrive = new Set(board.jobs.filter((job) => !isReachable(board, place, job)).map((job) => job.id))
  const jobs = board.jobs.filter((job) => how.planUnknown === true || placedOn.has(job.id) || !unknownDrive.has(job.id))
  const notes = board.jobs
    .filter((job) => unknownDrive.has(job.id))
    .map(
      (job) =>
        `Drive to ${job.label} unknown: set its pin on the map${placedOn.has(job.id) ? '; times on its sheet leave that drive out.' : ', then it can be planned.'}`,
    )
  const nowhere = board.travel.ids.length
  const visits = jobs.map((job) =>
    toVisit(board, clock, job, place.get(job.place ?? '') ?? nowhere, sheetOf, placedOn.get(job.id), how.disturbance === true),
  )
  const problem: RoutingProblem = { visits, crewDays: board.sheets.map((sheet) => toCrewDay(board, clock, sheet, place)), ...tables(board) }
  // Slots are asked for while someone waits, and the tables are whole by now: boardFaults has seen the rest.
  const problems = how.planUnknown === true ? [] : problemFaults(problem)
  if (problems.length > 0) return { faults: problems }
  const visitOf = new Map(jobs.map((job, v) => [job.id, v]))
  const present = board.sheets.map((sheet) => sheet.visits.flatMap(({ jobId }) => visitOf.get(jobId) ?? []))
  return { board, clock, problem, present, jobs, visitOf, sheetOf, unknownDrive, notes }
}

function isReachable(board: Board, place: ReadonlyMap<string, number>, job: BoardJob): boolean {
  const at = place.get(job.place ?? '')
  const start = place.get(board.sheets[0]?.startPlace ?? '')
  if (at === undefined) return false
  return start === undefined || (board.travel.seconds[start * board.travel.ids.length + at] as number) >= 0
}

/** The travel tables in whole seconds with one more place, nowhere, whose drives count nothing. */
function tables(board: Board): Pick<RoutingProblem, 'places' | 'durations' | 'distances'> {
  const n = board.travel.ids.length
  const durations = new Int32Array((n + 1) * (n + 1))
  const distances = new Float64Array((n + 1) * (n + 1))
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      durations[i * (n + 1) + j] = Math.max(0, Math.round(board.travel.seconds[i * n + j] as number))
      distances[i * (n + 1) + j] = Math.max(0, board.travel.miles[i * n + j] as number)
    }
  }
  return { places: n + 1, durations, distances }
}

function toCrewDay(board: Board, clock: BoardClock, sheet: Sheet, place: ReadonlyMap<string, number>): CrewDay {
  const d = dayIndex(clock, sheet.date)
  const span = (from: number, to: number): Span => ({ from: toTicks(clock, d, from), to: toTicks(clock, d, to) })
  const { prices } = board
  return {
    id: sheet.id,
    day: dayNumber(sheet.date),
    startPlace: place.get(sheet.startPlace) as number,
    endPlace: place.get(sheet.endPlace) as number,
    shift: span(sheet.shift.from, Math.max(sheet.shift.from, sheet.shift.to - (sheet.inHandMinutes ?? 0))),
    latestEnd: toTicks(clock, d, sheet.latestEnd),
    pauses: sheet.breaks.map(({ from, to, minutes }) => ({ start: span(from, to), ticks: Math.round(minutes * 60) })),
    rush: (board.rush ?? []).map(({ from, to, factor }) => ({ ...span(from, to), factor })),
    capacity: sheet.capacity,
    skills: sheet.skills,
    people: sheet.people,
    distancePrice: prices.perMile,
    drivePrice: (prices.perDriveHour * sheet.people) / 3600,
    overtimePrice: ((sheet.overtimePerHour ?? prices.overtimePerHour) * sheet.people) / 3600,
    sendPrice: prices.perSheet,
    ...(prices.perLateHour === undefined
      ? {}
      : {
          reserve: {
            ...{ by: toTicks(clock, d, sheet.shift.to), deviations: NINE_OF_TEN, driveSpread: DRIVE_SPREAD },
            price: prices.perLateHour / 3600,
          },
        }),
  }
}

/** When the hours of a sheet end, in ticks, its time in hand included. */
export function shiftEnd({ board, clock }: Pick<Built, 'board' | 'clock'>, r: number): number {
  const sheet = board.sheets[r] as Sheet
  return toTicks(clock, dayIndex(clock, sheet.date), sheet.shift.to)
}

function toVisit(
  board: Board,
  clock: BoardClock,
  job: BoardJob,
  place: number,
  sheetOf: ReadonlyMap<string, number>,
  placedOn: number | undefined,
  disturbance: boolean,
): RoutedVisit {
  const windows = jobWindows(clock, job)
  const promisedOn = job.promised === undefined ? undefined : sheetOf.get(job.promised.sheetId)
  const promisedDay = promisedOn === undefined ? -1 : dayIndex(clock, board.sheets[promisedOn]?.date ?? '')
  const keeps = job.promised !== undefined && promisedOn !== undefined && promisedDay >= 0
  const { prices } = board
  return {
    id: job.id,
    place,
    serviceTicks: Math.round(job.minutes * 60),
    ...(job.spread === undefined ? {} : { lasts: lastsOf(job.minutes * 60, job.spread) }),
    windows,
    out: job.out,
    back: job.back,
    skills: job.skills,
    people: job.people,
    ...(job.earliest === undefined ? {} : { releaseDay: dayNumber(job.earliest) }),
    ...(job.due === undefined ? {} : { dueDay: dayNumber(job.due), latePricePerDay: job.riskPerDay ?? 0 }),
    ...(keeps ? {} : { leaveOutPrice: placedOn === undefined ? (job.leaveOutPrice ?? prices.leaveOut) : prices.takeOff }),
    ...(disturbance && placedOn !== undefined && !keeps
      ? {
          dislikes: board.sheets.flatMap((_, r) => (r === placedOn ? [] : [{ crewDay: r, price: prices.perMove }])),
          ...standsAt(board, clock, job.id, placedOn),
        }
      : {}),
    ...(keeps && job.promised !== undefined
      ? {
          promised: {
            crewDay: promisedOn as number,
            start: { from: toTicks(clock, promisedDay, job.promised.from), to: toTicks(clock, promisedDay, job.promised.to) },
          },
        }
      : {}),
  }
}

/** The time written on the sheet where a job stands, and what another one there costs. */
function standsAt(board: Board, clock: BoardClock, jobId: string, r: number): Pick<RoutedVisit, 'stands'> {
  const sheet = board.sheets[r] as Sheet
  const minute = sheet.visits.find((visit) => visit.jobId === jobId)?.startMinute
  if (minute === undefined) return {}
  return { stands: { crewDay: r, start: toTicks(clock, dayIndex(clock, sheet.date), minute), price: board.prices.perRetime } }
}

/** Mean and variance of a length whose logarithm is normal about its middle: the mean is longer than the middle (Johnson, Kotz and Balakrishnan, chapter 14). */
function lastsOf(middle: number, spread: number): { mean: number; variance: number } {
  const mean = middle * Math.exp(spread ** 2 / 2)
  return { mean, variance: mean ** 2 * (Math.exp(spread ** 2) - 1) }
}

/** When a job may begin, in ticks; windows on days that are not looked at fall away. */
function jobWindows(clock: BoardClock, job: BoardJob): Span[] {
  if (job.windows.length === 0) return [{ from: 0, to: clock.end }]
  return job.windows.flatMap((window) => {
    const d = dayIndex(clock, window.date)
    return d < 0 ? [] : [{ from: toTicks(clock, d, window.from), to: toTicks(clock, d, window.to) }]
  })
}
