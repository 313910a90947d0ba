import type { Board, BoardJob, Sheet } from '@almanac/dispatch/propose/board'
import { DAY_FROM, DAY_TO } from './invent-week.ts'

/** One visit of a day: when it was told to begin, and until when its crew may come. */
export type Stop = { jobId: string; place: string; minutes: number; start: number; until: number }
export type Week = ReadonlyMap<string, readonly Stop[]>

/** How a dispatcher leaves room by hand. */
export type Room = { lunch: boolean; inHand: number }

const STEP = 5
const LUNCH = { from: 690, to: 780, minutes: 30 }
export const WINDOW = 120

/** Minutes of a drive that begins at a minute of the day, as the board has it; read here again, not asked of the planner. */
export function driveOf({ travel, rush = [] }: Board): (from: string, to: string, at: number) => number {
  const rows = new Map(travel.ids.map((id, n) => [id, n]))
  return (from, to, at) => {
    const seconds = travel.seconds[(rows.get(from) ?? 0) * travel.ids.length + (rows.get(to) ?? 0)] ?? 0
    return (seconds / 60) * (rush.findLast((span) => at >= span.from && at <= span.to)?.factor ?? 1)
  }
}

type Drive = ReturnType<typeof driveOf>

/** Whether a pause of half an hour has room beside the drives, begun when lunch may be. */
function hasLunch(stops: readonly Stop[], drive: Drive): boolean {
  let [free, place] = [DAY_FROM, 'yard']
  for (const stop of stops) {
    const begins = Math.max(free, LUNCH.from)
    if (begins <= LUNCH.to && begins + LUNCH.minutes + drive(place, stop.place, begins) <= stop.start) return true
    ;[free, place] = [stop.start + stop.minutes, stop.place]
  }
  return free <= LUNCH.to
}

/** A job put into a day at its first time between two stops that keep theirs; null where it has none. */
function insert(stops: readonly Stop[], at: number, job: BoardJob, drive: Drive, room: Room): { stops: Stop[]; added: number } | null {
  const [before, after] = [stops[at - 1], stops[at]]
  const from = before ? before.start + before.minutes : DAY_FROM
  const place = job.place ?? ''
  const there = drive(before?.place ?? 'yard', place, from)
  const start = Math.ceil((from + there) / STEP) * STEP
  const ends = start + job.minutes
  const on = drive(place, after?.place ?? 'yard', ends)
  if (ends + on > (after ? after.start : DAY_TO - room.inHand)) return null
  const stop = { jobId: job.id, place, minutes: job.minutes, start, until: start + WINDOW }
  const next = stops.toSpliced(at, 0, stop)
  if (room.lunch && !hasLunch(next, drive)) return null
  return { stops: next, added: there + on - drive(before?.place ?? 'yard', after?.place ?? 'yard', from) }
}

/** A dispatcher by hand: one job after another where it adds least driving, all others left at their times. Answers the week and what found no place. */
export function bookByHand(board: Board, jobs: readonly BoardJob[], week: Week, room: Room): { week: Week; left: number } {
  const drive = driveOf(board)
  const out = new Map(board.jobs.map((job) => [job.id, job.out.ft3]))
  const next = new Map([...week].map(([id, stops]) => [id, [...stops]]))
  let left = 0
  for (const job of jobs) {
    let best: { sheet: Sheet; stops: Stop[]; added: number } | null = null
    for (const sheet of board.sheets) {
      const stops = next.get(sheet.id) ?? []
      const load = stops.reduce((sum, one) => sum + (out.get(one.jobId) ?? 0), job.out.ft3)
      if (sheet.people < job.people || load > sheet.capacity.ft3) continue
      for (let at = 0; at <= stops.length; at++) {
        const found = insert(stops, at, job, drive, room)
        if (found && (best === null || found.added < best.added - 1e-9)) best = { sheet, ...found }
      }
    }
    if (best) next.set(best.sheet.id, best.stops)
    else left++
  }
  return { week: next, left }
}
