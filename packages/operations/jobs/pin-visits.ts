import type { Board, BoardJob } from '@almanac/dispatch/propose/board'
import { rushFactor } from '@almanac/dispatch/travel/estimate-leg'

/**
 * Holds every visit of a board at the time written on its sheet, but one: for a place that is taken by hand, nobody else shall move by a minute. Where the
 * drives leave a visit late already, it is held to when the crew can be there.
 */
export function pinVisits(board: Board, exceptJobId: string): Board {
  const { travel } = board
  const index = new Map(travel.ids.map((id, n) => [id, n]))
  const jobs = new Map(board.jobs.map((job) => [job.id, job]))
  const rush = { circuityFactor: 1, shortFactor: 1, longFactor: 1, rush: board.rush ?? [] }
  const driveMinutes = (from: string, to: string | null, minute: number) => {
    const seconds = travel.seconds[(index.get(from) ?? 0) * travel.ids.length + (index.get(to ?? '') ?? 0)] ?? 0
    return (Math.max(0, seconds) / 60) * rushFactor(rush, minute)
  }
  const pinned = new Map<string, BoardJob>()
  for (const sheet of board.sheets) {
    let place = sheet.startPlace
    let free = sheet.shift.from
    for (const { jobId, startMinute } of sheet.visits) {
      const job = jobs.get(jobId)
      if (!job || startMinute === undefined || jobId === exceptJobId) continue
      const arrival = free + driveMinutes(place, job.place, free)
      const begins = Math.max(startMinute, arrival)
      // Whole minutes, with one to spare for the planner's rounding.
      const to = begins > startMinute ? Math.ceil(begins) + 1 : startMinute
      pinned.set(jobId, { ...job, promised: { sheetId: sheet.id, from: startMinute, to } })
      place = job.place ?? place
      free = begins + job.minutes
    }
  }
  return { ...board, jobs: board.jobs.map((job) => pinned.get(job.id) ?? job) }
}
