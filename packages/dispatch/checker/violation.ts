import type { RoutingProblem } from '../problem/problem.ts'

export type ViolationKind =
  | 'shape'
  | 'missing'
  | 'twice'
  | 'left-out'
  | 'skill'
  | 'people'
  | 'not-allowed'
  | 'release'
  | 'promise'
  | 'window'
  | 'shift'
  | 'drive'
  | 'service'
  | 'pause'
  | 'load'
  | 'price'

/** One thing wrong with a plan, in a sentence with the numbers (times in ticks). */
export interface Violation {
  readonly kind: ViolationKind
  readonly sentence: string
  /** Of whose day, where the sentence is about a crew's pauses. */
  readonly crewDay?: string
}

export function visitName(problem: RoutingProblem, v: number): string {
  return `Visit ${problem.visits[v]?.id ?? v}`
}
