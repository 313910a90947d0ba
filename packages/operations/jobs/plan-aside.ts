import type { PlanAsked } from '@almanac/contract/plans'
import type { Board } from '@almanac/dispatch/propose/board'
import { type Proposal, startProposal } from '@almanac/dispatch/propose/propose-plan'
import { type CrewDisruption, whatIf } from '@almanac/dispatch/slots/what-if'
import { answerAside } from '@almanac/runtime/answer-aside'
import type { CrewLeft } from './read-board.ts'

export type PlanInput = {
  board: Board
  asked: PlanAsked
  /** What the other vehicle carries. */
  capacity: { ft3: number; lb: number }
  left: CrewLeft
  seed: number
  seconds: number
}

/** A proposal as it is stored: its spots as a list, so that it is plain data. */
export type StoredProposal = Omit<Proposal, 'spots' | 'sentences'> & {
  sentences: string[]
  spots: [string, { sheetId: string; startMinute: number; position: number }][]
}
export type PlanAnswer = { proposal: StoredProposal; board: Omit<Board, 'travel'> } | { faults: string[] }

/** Enough for a week of a small firm; the clock usually ends the search before. */
const MOST_ITERATIONS = 20_000
const MISHAP_ITERATIONS = 2_000

/** Plans in a process of its own: the search is told when its time is up. */
function planAside({ board, asked, capacity, left, seed, seconds }: PlanInput): PlanAnswer {
  const until = Date.now() + seconds * 1000
  const shouldStop = () => Date.now() >= until
  if (asked.kind === 'week') {
    const planning = startProposal(board, { seed })
    if ('faults' in planning) return planning
    planning.improve(MOST_ITERATIONS, shouldStop)
    return answer(planning.proposal(), board, [])
  }
  const met = whatIf(board, mishapOn(asked, capacity, left), { seed, iterations: MISHAP_ITERATIONS, shouldStop })
  if ('faults' in met) return met
  return answer(met.proposal, met.board, [met.sentence])
}

/** What happened, as the planner takes it. */
function mishapOn(asked: Exclude<PlanAsked, { kind: 'week' }>, capacity: PlanInput['capacity'], left: CrewLeft): CrewDisruption {
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
