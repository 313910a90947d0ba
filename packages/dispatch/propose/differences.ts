import type { RoutePlan } from '../problem/plan.ts'
import type { Board, Sheet } from './board.ts'
import { dayIndex, toWall } from './board-clock.ts'
import type { Built } from './build-problem.ts'
import { sayDay, sayTime } from './say.ts'

/** One thing that a proposal changes; a dispatcher takes it or leaves it. `id` is the job's. */
export interface Difference {
  readonly id: string
  readonly kind: 'place' | 'move' | 'time' | 'take-off'
  readonly jobId: string
  readonly fromSheetId: string | null
  readonly fromStartMinute: number | null
  readonly toSheetId: string | null
  readonly startMinute: number | null
  readonly sentence: string
}

/** Where each job is and when it begins. */
export interface Spot {
  readonly sheetId: string
  readonly startMinute: number
  readonly position: number
}

/** Spots of a plan by job id. */
export function spotsOf(built: Built, plan: RoutePlan): Map<string, Spot> {
  const spots = new Map<string, Spot>()
  plan.days.forEach((day, r) => {
    const sheet = built.board.sheets[r] as Sheet
    const d = dayIndex(built.clock, sheet.date)
    day.visits.forEach(({ visit, start }, position) => {
      const job = built.jobs[visit]
      if (job !== undefined) spots.set(job.id, { sheetId: sheet.id, startMinute: toWall(built.clock, d, start), position })
    })
  })
  return spots
}

/** What changes from one set of spots to another. A job whose time stays to the minute on its sheet is no difference. */
export function differencesOf(board: Board, before: ReadonlyMap<string, Spot>, after: ReadonlyMap<string, Spot>): Difference[] {
  const sheets = new Map(board.sheets.map((sheet) => [sheet.id, sheet]))
  const found = board.jobs.flatMap((job): Difference[] => {
    const was = before.get(job.id)
    const is = after.get(job.id)
    const base = {
      id: job.id,
      jobId: job.id,
      fromSheetId: was?.sheetId ?? null,
      fromStartMinute: was?.startMinute ?? null,
      toSheetId: is?.sheetId ?? null,
      startMinute: is?.startMinute ?? null,
    }
    const at = (spot: Spot): string => {
      const sheet = sheets.get(spot.sheetId)
      return sheet === undefined
        ? 'a sheet that’s gone'
        : `${sheet.label}, ${sayDay(sheet.date, board)}, ${sayTime(spot.startMinute, board)}`
    }
    if (was === undefined && is !== undefined) return [{ ...base, kind: 'place', sentence: `Book ${job.label}: ${at(is)}.` }]
    if (was !== undefined && is === undefined) return [{ ...base, kind: 'take-off', sentence: `Take ${job.label} off: ${at(was)}.` }]
    if (was === undefined || is === undefined) return []
    if (was.sheetId !== is.sheetId) return [{ ...base, kind: 'move', sentence: `Move ${job.label} from ${at(was)} to ${at(is)}.` }]
    if (was.startMinute === is.startMinute) return []
    const words = `${sayTime(is.startMinute, board)} instead of ${sayTime(was.startMinute, board)}`
    return [{ ...base, kind: 'time', sentence: `${job.label} starts at ${words} with ${sheets.get(is.sheetId)?.label ?? 'its crew'}.` }]
  })
  const day = (difference: Difference): string => sheets.get(difference.toSheetId ?? difference.fromSheetId ?? '')?.date ?? ''
  return found.sort((a, b) => day(a).localeCompare(day(b)) || (a.startMinute ?? 0) - (b.startMinute ?? 0) || a.id.localeCompare(b.id))
}
