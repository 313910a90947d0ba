import { formatDuration } from '@almanac/units/format-clock'
import type { CrewDay, RoutedVisit } from '../problem/problem.ts'
import type { Board, BoardJob, Sheet } from '../propose/board.ts'
import { type Built, buildProblem } from '../propose/build-problem.ts'
import { type Saying, sayDay, sayList } from '../propose/say.ts'
import { currentSheet } from './current-sheet.ts'
import { type Obstacle, obstacleOrGaps } from './obstacle.ts'
import { type Relief, reliefs } from './relax.ts'

/** Where a job is looked for: one sheet, one day, or (nothing given) the whole horizon. */
export interface Where {
  readonly date?: string
  readonly sheetId?: string
}

/** Nearest to a place first: what stands last against a job on any sheet is what to talk about. */
const NEAREST: readonly Obstacle[] = ['time', 'load', 'window', 'skill', 'people', 'early', 'promised']

/**
 * Why a job cannot be placed, in one sentence that names what stands against it and what would make room; null when it can be placed. Faults of the board come
 * back as its sentence.
 */
export function explainNoFit(given: Board | Built, jobId: string, where: Where = {}): string | null {
  const built = 'problem' in given ? given : buildProblem(given, { planUnknown: true })
  if ('faults' in built) return built.faults[0] ?? null
  const v = built.visitOf.get(jobId)
  const job = built.board.jobs.find((one) => one.id === jobId)
  if (job === undefined) return 'That job is outside the days planned.'
  if (v === undefined) return `Drive to ${job.label} unknown: set its pin on the map, then it can be planned.`
  const visit = built.problem.visits[v] as RoutedVisit
  const sheets = built.board.sheets.flatMap((sheet, r) => (isWhere(sheet, where) ? [{ sheet, r }] : []))
  if (sheets.length === 0)
    return `No crew has a day sheet ${where.date === undefined ? 'in these days' : `on ${sayDay(where.date, built.board)}`}: open one, or choose another day.`
  const against: { sheet: Sheet; r: number; obstacle: Obstacle }[] = []
  for (const { sheet, r } of sheets) {
    const others = (built.present[r] ?? []).filter((other) => other !== v).map((other) => built.problem.visits[other] as RoutedVisit)
    const found = obstacleOrGaps(built.problem, built.problem.crewDays[r] as CrewDay, r, others, visit)
    if (typeof found !== 'string') return null
    against.push({ sheet, r, obstacle: found })
  }
  const main = NEAREST.find((obstacle) => against.some((one) => one.obstacle === obstacle)) as Obstacle
  const ways = against.flatMap(({ sheet, r, obstacle }) => reliefs(built, sheet, r, v, obstacle))
  const chosen = chooseWays(ways)
  const late = where.sheetId !== undefined && main === 'time' && isBroken(built, against[0]?.r ?? -1, v)
  const freed = chosen.length === 0 ? 'no single change would make room' : sayEither(chosen)
  const asked = against.map((one) => one.sheet)
  return `${sayConstraint(main, job, asked, where, built.board)}${late ? ', and comes late already' : ''}; ${freed}.`
}

function isBroken(built: Built, r: number, v: number): boolean {
  const others = (built.present[r] ?? []).filter((other) => other !== v).map((other) => built.problem.visits[other] as RoutedVisit)
  return currentSheet(built.problem, built.problem.crewDays[r] as CrewDay, others).broken
}

function isWhere(sheet: Sheet, { date, sheetId }: Where): boolean {
  return (date === undefined || sheet.date === date) && (sheetId === undefined || sheet.id === sheetId)
}

/** The easiest way, and the easiest of another kind if there is one. */
function chooseWays(ways: readonly Relief[]): string[] {
  const sorted = [...ways].sort((a, b) => a.effort - b.effort)
  const first = sorted[0]
  if (first === undefined) return []
  const second = sorted.find((way) => way.kind !== first.kind)
  return [first.words, ...(second === undefined ? [] : [second.words])]
}

function sayEither(words: readonly string[]): string {
  return words.join(', or ')
}

function sayConstraint(main: Obstacle, job: BoardJob, sheets: readonly Sheet[], where: Where, saying: Saying): string {
  const dates = [...new Set(sheets.map((sheet) => sheet.date))].sort()
  const label = where.sheetId === undefined ? null : (sheets[0]?.label ?? null)
  const when =
    dates.length === 1
      ? `on ${sayDay(dates[0] as string, saying)}`
      : `from ${sayDay(dates[0] as string, saying)} to ${sayDay(dates.at(-1) as string, saying)}`
  const crew = job.people === 1 ? 'crew' : `crew of ${job.people === 2 ? 'two' : job.people}`
  if (main === 'time') {
    return label === null
      ? `No ${crew} that can do ${job.label} is free for ${formatDuration(job.minutes, saying)} in its windows ${when}`
      : `${label} has no ${formatDuration(job.minutes, saying)} free for ${job.label} in its windows ${when}`
  }
  if (main === 'load') return `No vehicle with room in the day can also carry ${sayLoad(job)} for ${job.label} ${when}`
  if (main === 'window') return `The windows of ${job.label} meet the hours of no ${crew} that can do it ${when}`
  if (main === 'skill') return `No ${crew} can do ${sayList(job.skills)}, which ${job.label} needs, ${when}`
  if (main === 'people') return `No ${crew}, which ${job.label} needs, is out ${when}`
  if (main === 'early') return sayEarly(job, saying)
  return `${job.label} has been promised with another crew or day`
}

function sayEarly({ label, earliest, earliestBecause }: BoardJob, saying: Saying): string {
  return `${label} may not be done before ${sayDay(earliest ?? '', saying)}${earliestBecause === undefined ? '' : `: ${earliestBecause}`}`
}

function sayLoad(job: BoardJob): string {
  const ft3 = Math.max(job.out.ft3, job.back.ft3)
  const lb = Math.max(job.out.lb, job.back.lb)
  return sayList([...(ft3 > 0 ? [`${Math.round(ft3 * 10) / 10} ft³`] : []), ...(lb > 0 ? [`${Math.round(lb)} lb`] : [])])
}
