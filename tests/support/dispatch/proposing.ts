import { applyDifferences } from '@almanac/dispatch/propose/apply-differences'
import type { Board } from '@almanac/dispatch/propose/board'
import { type Proposal, type Proposing, startProposal } from '@almanac/dispatch/propose/propose-plan'
import { inventedBoard } from './invented-board.ts'

export function start(of: Board, seed = 1): Proposing {
  const proposing = startProposal(of, { seed })
  if ('faults' in proposing) throw new Error(proposing.faults.join(' '))
  return proposing
}

export function propose(of: Board, iterations: number, seed = 1): Proposal {
  const proposing = start(of, seed)
  proposing.improve(iterations)
  return proposing.proposal()
}

export function apply(
  of: Board,
  proposal: Pick<Proposal, 'differences' | 'spots'>,
  ids: readonly string[],
): { board: Board; violations: readonly string[] } {
  const applied = applyDifferences(of, proposal, ids)
  if ('faults' in applied) throw new Error(applied.faults.join(' '))
  return applied
}

export const idsOf = (proposal: Proposal): string[] => proposal.differences.map((difference) => difference.id)
export const small = (seed: number): Board => inventedBoard(seed, { crews: 3, days: 2, perSheet: 3, waiting: 5 })
