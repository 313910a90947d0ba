import { timetable } from '../search/timetable.ts'
import type { Board, BoardVisit } from './board.ts'
import { type Built, buildProblem } from './build-problem.ts'
import { spotsOf } from './differences.ts'
import { newFaults, planFaults } from './plan-faults.ts'
import { type Proposal, presentSpots } from './propose-plan.ts'
import { roundToFiveMinutes } from './round-to-five-minutes.ts'

/** A board with some of a proposal's differences taken, and what the checker says against it. */
export interface Applied {
  readonly board: Board
  /** Jobs taken that would begin at another time than the proposal shows, with that time: on drives or sheets that are not the proposal's any more. */
  readonly moved: readonly { readonly jobId: string; readonly startMinute: number }[]
  /** Jobs that nobody chose and that would have to begin at another time than stands on their sheet, by what was taken. */
  readonly pushed: readonly { readonly jobId: string; readonly startMinute: number }[]
  /** Empty: it may be saved. Otherwise what does not go together when only these are taken; what was wrong before and gets no worse does not count. */
  readonly violations: readonly string[]
}

/**
 * Takes the differences chosen (by id) and leaves the others; every visit left in place keeps its sheet, and each sheet stands in the order of its times. What is taken
 * begins when the proposal shows it. The checker looks at the result, because half of a proposal may not fit.
 */
export function applyDifferences(
  board: Board,
  proposal: Pick<Proposal, 'differences' | 'spots'>,
  chosen: readonly string[],
): Applied | { faults: string[] } {
  const built = buildProblem(board)
  if ('faults' in built) return built
  const wanted = new Set(chosen)
  const taken = proposal.differences.filter((difference) => wanted.has(difference.id))
  if (taken.length < wanted.size)
    return { faults: ['Some of the changes chosen are not in this plan any more; it may have been made again. Look at it again.'] }
  const spots = presentSpots(built)
  const changed = new Map(taken.map((difference) => [difference.id, difference]))
  for (const difference of taken) {
    const spot = proposal.spots.get(difference.jobId)
    if (difference.toSheetId === null || spot === undefined) spots.delete(difference.jobId)
    else spots.set(difference.jobId, spot)
  }
  const bySheet = new Map<string, { jobId: string; time: number; position: number }[]>()
  for (const [jobId, spot] of spots) {
    // A job whose time was left as it is stands where the proposal has it if all its sheet's changes were taken; its own time decides otherwise.
    const list = bySheet.get(spot.sheetId) ?? []
    list.push({
      jobId,
      time: spot.startMinute,
      position: changed.has(jobId) ? spot.position : (proposal.spots.get(jobId)?.position ?? spot.position),
    })
    bySheet.set(spot.sheetId, list)
  }
  const sheets = board.sheets.map((sheet) => {
    const list = [...(bySheet.get(sheet.id) ?? [])].sort((a, b) => a.time - b.time || a.position - b.position)
    // The times of those that stay are known; a visit keeps its own where the new order lets it.
    const written = new Map(sheet.visits.map((visit) => [visit.jobId, visit]))
    return { ...sheet, visits: list.map(({ jobId }): BoardVisit => (changed.has(jobId) ? { jobId } : (written.get(jobId) ?? { jobId }))) }
  })
  const shown = new Map(taken.flatMap(({ jobId, startMinute }) => (startMinute === null ? [] : [[jobId, startMinute] as const])))
  return timed({ ...board, sheets }, built, shown)
}

/** Writes the times on the sheets, and checks against what was on them. */
function timed(board: Board, was: Built, shown: ReadonlyMap<string, number>): Applied | { faults: string[] } {
  const built = buildProblem(board)
  if ('faults' in built) return built
  // Who was not chosen keeps the time that stands, where the others leave it.
  const written = new Map(
    was.board.sheets.flatMap((sheet) =>
      sheet.visits.flatMap(({ jobId, startMinute }) => (startMinute === undefined ? [] : [[jobId, startMinute] as const])),
    ),
  )
  const plan = roundToFiveMinutes(built, timetable(built.problem, built.present).plan, new Map([...written, ...shown]))
  const spots = spotsOf(built, plan)
  const moved = [...shown].flatMap(([jobId, minute]) => {
    const spot = spots.get(jobId)
    return spot === undefined || spot.startMinute === minute ? [] : [{ jobId, startMinute: spot.startMinute }]
  })
  const standing = timetable(was.problem, was.present).plan
  // A sheet whose own drives leave a visit no room for its time puts it later by itself: that is nobody's doing.
  const byItself = spotsOf(was, roundToFiveMinutes(was, standing, written))
  const pushed = [...spots].flatMap(([jobId, { startMinute }]) => {
    const stands = written.get(jobId)
    const isPushed = !shown.has(jobId) && stands !== undefined && startMinute > Math.max(stands, byItself.get(jobId)?.startMinute ?? stands)
    return isPushed ? [{ jobId, startMinute }] : []
  })
  const sheets = board.sheets.map((sheet) => ({
    ...sheet,
    visits: sheet.visits.map(({ jobId }): BoardVisit => {
      const spot = spots.get(jobId)
      return spot === undefined ? { jobId } : { jobId, startMinute: spot.startMinute }
    }),
  }))
  return { board: { ...board, sheets }, moved, pushed, violations: newFaults(planFaults(was, standing), planFaults(built, plan)) }
}
