import type { PlanAsked } from '@almanac/contract/plans'
import type { Board } from '@almanac/dispatch/propose/board'
import { type Proposal, startProposal } from '@almanac/dispatch/propose/propose-plan'
import { type Mishap, whatIf } from '@almanac/dispatch/slots/what-if'

export type PlanInput = { board: Board; asked: PlanAsked; seed: number; seconds: number }

/** A proposal as it is stored: its spots as a list, so that it is plain data. */
export type StoredProposal = Omit<Proposal, 'spots' | 'sentences'> & {
  sentences: string[]
  spots: [string, { sheetId: string; startMinute: number; position: number }][]
}
export type PlanAnswer = { proposal: StoredProposal; board: Omit<Board, 'travel'> } | { faults: string[] }

/** Enough for a week of a small firm; the clock usually ends the search before. */
const MOST_ITERATIONS = 20_000
const MISHAP_ITERATIONS = 2_000

/** Plans in a thread of its own: the search is told when its time is up. */
export function planAside({ board, asked, seed, seconds }: PlanInput): PlanAnswer {
  const until = Date.now() + seconds * 1000
  const shouldStop = () => Date.now() >= until
  if (asked.kind === 'week') {
    const planning = startProposal(board, { seed })
    if ('faults' in planning) return planning
    planning.improve(MOST_ITERATIONS, shouldStop)
    return answer(planning.proposal(), board, [])
  }
  const mishap: Mishap =
    asked.kind === 'sheet-off'
      ? { kind: 'sheet-off', sheetId: asked.crewDayId }
      : { kind: 'fewer-people', sheetId: asked.crewDayId, people: asked.people, skills: [] }
  const met = whatIf(board, mishap, { seed, iterations: MISHAP_ITERATIONS, shouldStop })
  if ('faults' in met) return met
  return answer(met.proposal, met.board, [met.sentence])
}

function answer(proposal: Proposal, board: Board, first: string[]): PlanAnswer {
  const { spots, ...rest } = proposal
  const { travel: _drives, ...stored } = board
  return { proposal: { ...rest, sentences: [...first, ...proposal.sentences], spots: [...spots] }, board: stored }
}
