import type { Sequences } from '../problem/plan.ts'
import type { RoutedVisit, RoutingProblem } from '../problem/problem.ts'
import type { Board, BoardJob, Sheet } from '../propose/board.ts'
import { breakDown } from '../propose/breakdown.ts'
import { type Built, buildProblem } from '../propose/build-problem.ts'
import { type Proposal, presentSpots, toProposal } from '../propose/propose-plan.ts'
import { roundToFiveMinutes } from '../propose/round-to-five-minutes.ts'
import { type Saying, sayDay } from '../propose/say.ts'
import { startPlanning } from '../search/planner.ts'
import { timetable } from '../search/timetable.ts'
import { freePromise } from './free-promise.ts'
import { gapsFor, plainObstacle } from './obstacle.ts'
import { fullestShare, type TimedSheet, timeSheet } from './time-sheet.ts'

/** What happened: a crew's whole day falls away, people of it do, or its vehicle can carry less. */
export type CrewDisruption =
  | { readonly kind: 'sheet-off'; readonly sheetId: string }
  | { readonly kind: 'fewer-people'; readonly sheetId: string; readonly people: number; readonly skills: readonly string[] }
  | { readonly kind: 'other-vehicle'; readonly sheetId: string; readonly capacity: { readonly ft3: number; readonly lb: number } }

export interface SheetWhatIf {
  readonly proposal: Proposal
  readonly sentence: string
  /** The board after the mishap with the stranded jobs off their sheet: what `applyDifferences` takes the proposal to. */
  readonly board: Board
}

/**
 * The day breaks: which jobs are stranded, and where they can go with the least disturbance. Where all of them fit with everyone else in place, nobody else moves. Otherwise the
 * planner makes room on the days they can be done, and moves no more than it must. A promise to a customer keeps its time, with another crew. Waiting jobs stay waiting. The
 * same seed and iterations give the same answer.
 */
export function whatIf(
  board: Board,
  mishap: CrewDisruption,
  how: { seed: number; iterations: number; shouldStop?: () => boolean },
): SheetWhatIf | { faults: string[] } {
  const original = buildProblem(board, { planUnknown: true })
  if ('faults' in original) return original
  const sheet = board.sheets.find((one) => one.id === mishap.sheetId)
  if (sheet === undefined) return { faults: ['That day sheet is outside the days planned.'] }
  const { board: broken, stranded } = strand(original, sheet, mishap)
  const closed = mishap.kind === 'sheet-off' ? sheet.id : null
  const built = buildClosed(broken, closed, true)
  if ('faults' in built) return built
  const visits = stranded.map((id) => built.visitOf.get(id) as number)
  const reinserted = reinsert(built, visits)
  const placed = new Set(reinserted.flat())
  const homeless = visits.filter((v) => !placed.has(v))
  const orders = homeless.length === 0 ? reinserted : makeRoom(built, closed, reinserted, homeless, how)
  const { plan } = timetable(built.problem, orders)
  const before = breakDown(original, timetable(original.problem, original.present).plan)
  const proposal = toProposal(built, presentSpots(original), before, roundToFiveMinutes(built, plan), new Set(stranded))
  return { proposal, board: broken, sentence: sayOutcome(built.board, sheet, stranded.length, proposal, new Set(stranded)) }
}

/** Days on which room is made for jobs that may be done any day. */
const DAYS_AHEAD = 3

/** Lets the planner move others on the days that matter, at a price that only a stranded job's place is worth. */
function makeRoom(
  built: Built,
  closed: string | null,
  orders: Sequences,
  homeless: readonly number[],
  how: { seed: number; iterations: number; shouldStop?: () => boolean },
): Sequences {
  const { board } = built
  const wanted = new Set(homeless.map((v) => built.jobs[v]?.id))
  const jobs = board.jobs.filter((job) => wanted.has(job.id))
  const all = [...new Set(board.sheets.map((sheet) => sheet.date))].sort()
  const first = board.sheets.find((sheet) => sheet.id === closed)?.date ?? all[0]
  const dates = new Set(
    jobs.flatMap((job) =>
      job.windows.length > 0
        ? job.windows.map((window) => window.date)
        : all.slice(all.indexOf(first ?? ''), all.indexOf(first ?? '') + DAYS_AHEAD),
    ),
  )
  const sheets = board.sheets.flatMap((sheet, r) =>
    dates.has(sheet.date) ? [{ ...sheet, visits: (orders[r] ?? []).map((v) => standingAs(sheet, built.jobs[v]?.id as string)) }] : [],
  )
  const concerned = new Set([...wanted, ...sheets.flatMap((sheet) => sheet.visits.map(({ jobId }) => jobId))])
  const perMove = Math.max(board.prices.perMove, board.prices.takeOff / 5)
  const part = buildClosed(
    { ...board, sheets, jobs: board.jobs.filter((job) => concerned.has(job.id)), prices: { ...board.prices, perMove } },
    closed,
    true,
  )
  if ('faults' in part) return orders
  const planner = startPlanning(part.problem, { seed: how.seed, from: part.present })
  planner.improve(how.iterations, how.shouldStop)
  const found = new Map(
    planner
      .best()
      .days.map((day, r) => [
        part.board.sheets[r]?.id,
        day.visits.map(({ visit }) => built.visitOf.get(part.jobs[visit]?.id ?? '') as number),
      ]),
  )
  return orders.map((order, r) => found.get(board.sheets[r]?.id) ?? order)
}

/** A job on a sheet, at the time written there if it stood there before. */
function standingAs(sheet: Sheet, jobId: string): Sheet['visits'][number] {
  return sheet.visits.find((visit) => visit.jobId === jobId) ?? { jobId }
}

/** The problem, with nobody to be put on the sheet that fell away. */
function buildClosed(board: Board, closed: string | null, disturbance: boolean): Built | { faults: string[] } {
  const built = buildProblem(board, { planUnknown: true, disturbance })
  const r = 'faults' in built || closed === null ? undefined : built.sheetOf.get(closed)
  return 'faults' in built || r === undefined ? built : { ...built, problem: closeSheet(built.problem, r) }
}

/** Takes off the sheet what it can no longer do, first from its end; a promise becomes a window that any crew may keep. */
function strand(built: Built, sheet: Sheet, mishap: CrewDisruption): { board: Board; stranded: string[] } {
  const { board } = built
  const r = built.sheetOf.get(sheet.id) as number
  const changed: Sheet =
    mishap.kind === 'fewer-people'
      ? { ...sheet, people: mishap.people, skills: mishap.skills }
      : mishap.kind === 'other-vehicle'
        ? { ...sheet, capacity: mishap.capacity }
        : sheet
  const crew = {
    ...(built.problem.crewDays[r] as RoutingProblem['crewDays'][number]),
    people: changed.people,
    skills: changed.skills,
    capacity: changed.capacity,
  }
  let kept = (built.present[r] ?? []).filter(
    (v) => mishap.kind !== 'sheet-off' && plainObstacle(crew, r, built.problem.visits[v] as RoutedVisit) === null,
  )
  const load = (list: readonly number[]): number =>
    fullestShare(
      crew,
      list.map((v) => built.problem.visits[v] as RoutedVisit),
    )
  while (kept.length > 0 && load(kept) > 1 + 1e-9) {
    // The one whose going helps most.
    const gone = kept.reduce((best, v) =>
      load(kept.filter((other) => other !== v)) < load(kept.filter((other) => other !== best)) ? v : best,
    )
    kept = kept.filter((v) => v !== gone)
  }
  const keptIds = new Set(kept.map((v) => built.jobs[v]?.id))
  const stranded = sheet.visits.map(({ jobId }) => jobId).filter((id) => !keptIds.has(id) && built.visitOf.has(id))
  const gone = new Set(stranded)
  const jobs = board.jobs.map((job): BoardJob => (gone.has(job.id) ? freePromise(job, sheet, board) : job))
  const sheets = board.sheets.map((one) =>
    one.id === sheet.id ? { ...changed, visits: sheet.visits.filter(({ jobId }) => !gone.has(jobId)) } : one,
  )
  return { board: { ...board, jobs, sheets }, stranded }
}

/** Nobody may be put on a sheet that fell away. */
function closeSheet(problem: RoutingProblem, closed: number): RoutingProblem {
  const open = problem.crewDays.map((_, r) => r).filter((r) => r !== closed)
  return { ...problem, visits: problem.visits.map((visit) => (visit.promised === undefined ? { ...visit, allowedCrewDays: open } : visit)) }
}

/** Puts stranded visits where they add least with all others in place, the one with the fewest places first. */
function reinsert(built: Built, stranded: readonly number[]): Sequences {
  const { problem } = built
  const orders = built.present.map((order) => [...order])
  const waiting = new Set(stranded)
  while (waiting.size > 0) {
    const choices = [...waiting].map((v) => ({ v, ...cheapest(problem, orders, v) }))
    const next = choices.reduce((a, b) => (b.places < a.places || (b.places === a.places && b.price < a.price) ? b : a))
    waiting.delete(next.v)
    if (next.r >= 0) orders[next.r]?.splice(next.position, 0, next.v)
  }
  return orders
}

function cheapest(
  problem: RoutingProblem,
  orders: readonly (readonly number[])[],
  v: number,
): { r: number; position: number; price: number; places: number } {
  const visit = problem.visits[v] as RoutedVisit
  let best = { r: -1, position: -1, price: Number.POSITIVE_INFINITY }
  let places = 0
  problem.crewDays.forEach((crew, r) => {
    if (plainObstacle(crew, r, visit) !== null) return
    const others = (orders[r] ?? []).map((other) => problem.visits[other] as RoutedVisit)
    const before = timeSheet(problem, crew, others)
    const late = visit.dueDay === undefined ? 0 : Math.max(0, crew.day - visit.dueDay) * (visit.latePricePerDay ?? 0)
    for (const { position, timed } of gapsFor(problem, crew, others, visit)) {
      places++
      const sent = others.length === 0 ? crew.sendPrice : 0
      const driven = timed.drivePrice - before.drivePrice + timed.overtimePrice - before.overtimePrice
      const again = reTimed(others, timed, r, position) - reTimed(others, before, r)
      const price = driven + timed.reservePrice - before.reservePrice + late + sent + again
      if (price < best.price) best = { r, position, price }
    }
  })
  return { ...best, places }
}

/** What it costs that visits of a sheet do not begin when their customers think they do, with one more put in at a position. */
function reTimed(others: readonly RoutedVisit[], timed: TimedSheet, r: number, position = others.length): number {
  return others.reduce((sum, { stands }, n) => {
    const start = timed.day.visits[n < position ? n : n + 1]?.start
    return sum + (stands?.crewDay === r && stands.start !== start ? stands.price : 0)
  }, 0)
}

function sayOutcome(saying: Saying, sheet: Sheet, stranded: number, proposal: Proposal, ids: ReadonlySet<string>): string {
  const label = `${sheet.label} on ${sayDay(sheet.date, saying)}`
  if (stranded === 0) return `${label}: nothing on the sheet is stranded.`
  const homeless = proposal.waiting.filter(({ jobId }) => ids.has(jobId)).length
  const others = (kind: 'move' | 'time') => proposal.differences.filter((one) => one.kind === kind && !ids.has(one.jobId)).length
  const [moved, retimed] = [others('move'), others('time')]
  const placed = stranded - homeless
  const later = retimed > 0 ? `, ${retimed} ${retimed === 1 ? 'begins' : 'begin'} at another time` : ''
  return `${label}: ${stranded} ${stranded === 1 ? 'job is' : 'jobs are'} stranded, ${placed} ${placed === 1 ? 'finds' : 'find'} another place, ${homeless} ${homeless === 1 ? 'waits' : 'wait'}; ${moved} of the others ${moved === 1 ? 'moves' : 'move'}${later}.`
}
