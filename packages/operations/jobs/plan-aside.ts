import type { PlanAsked } from '@almanac/contract/plans'
import type { Board } from '@almanac/dispatch/propose/board'
import { sayUsual } from '@almanac/dispatch/propose/breakdown'
import { type Proposal, startProposal } from '@almanac/dispatch/propose/propose-plan'
import { type CrewDisruption, whatIf } from '@almanac/dispatch/slots/what-if'
import { answerAside } from '@almanac/runtime/answer-aside'
import type { CrewLeft } from './read-board.ts'

/** All but who goes with whom, which is worked out otherwise. */
export type DaysAsked = Exclude<PlanAsked, { kind: 'crews' }>

export type PlanInput = {
  board: Board
  asked: DaysAsked
  /** What the other vehicle carries. */
  capacity: { ft3: number; lb: number }
  left: CrewLeft
  seed: number
  seconds: number
}

/** A proposal as it is stored: its spots as a list, so that it is plain data. */
export type StoredProposal = Omit<Proposal, 'spots' | 'sentences'> & {
  sentences: string[]
  /** How many of its changes were taken already. */
  taken?: number
  spots: [string, { sheetId: string; startMinute: number; position: number }][]
}
export type PlanAnswer = { proposal: StoredProposal; board: Omit<Board, 'travel'> } | { faults: string[] }

/** Enough for a week of a small firm; the clock usually ends the search before. */
const MOST_ITERATIONS = 20_000
const MISHAP_ITERATIONS = 2_000

/** Plans in a process of its own: the search is told when its time is up. */
function planAside({ board, asked, capacity, left, seed, seconds }: PlanInput): PlanAnswer {
  if (asked.kind === 'week') return planWeek(board, seed, seconds)
  const until = Date.now() + seconds * 1000
  const shouldStop = () => Date.now() >= until
  const met = whatIf(board, mishapOn(asked, capacity, left), { seed, iterations: MISHAP_ITERATIONS, shouldStop })
  if ('faults' in met) return met
  return answer(met.proposal, met.board, [met.sentence])
}

/** Where days shall end on time, half of the search goes to what the same week would be without: so its price is seen. */
function planWeek(board: Board, seed: number, seconds: number): PlanAnswer {
  const search = (of: Board, share: number): Proposal | { faults: string[] } => {
    const until = Date.now() + share * 1000
    const planning = startProposal(of, { seed })
    if ('faults' in planning) return planning
    planning.improve(MOST_ITERATIONS, () => Date.now() >= until)
    return planning.proposal()
  }
  const isOnTime = board.prices.perLateHour !== undefined
  const found = search(board, isOnTime ? seconds / 2 : seconds)
  if ('faults' in found) return found
  if (!isOnTime) return answer(found, board, [])
  // At no price lateness is counted only.
  const usual = search({ ...board, prices: { ...board.prices, perLateHour: 0 } }, seconds / 2)
  return answer(found, board, 'faults' in usual ? [] : [sayUsual(usual.after, board)])
}

/** What happened, as the planner takes it. */
function mishapOn(asked: Exclude<DaysAsked, { kind: 'week' }>, capacity: PlanInput['capacity'], left: CrewLeft): CrewDisruption {
  const sheetId = asked.crewDayId
  if (asked.kind === 'other-vehicle') return { kind: 'other-vehicle', sheetId, capacity }
  if (asked.kind === 'sheet-off' || left.people === 0) return { kind: 'sheet-off', sheetId }
  return { kind: 'fewer-people', sheetId, ...left }
}

function answer(proposal: Proposal, board: Board, first: string[]): PlanAnswer {
  const { spots, ...rest } = proposal
  const { travel: _drives, ...stored } = board
  return { proposal: { ...rest, sentences: [...first, ...proposal.sentences], spots: [...spots] }, board: stored }
}

answerAside(planAside)
