import type { Moved } from './cause-posterior.ts'
import type { Cause } from './causes.ts'

/** What one answer did to one cause: its chance was multiplied by `factor`. */
export type Contribution = { title: string; answer: string; factor: number; words: string; reason: string; source: string }

/** What each finding did to a cause, the strongest first. */
export function contributionsTo(cause: Cause, moves: readonly Moved[]): Contribution[] {
  return moves
    .map(({ finding, factors }) => {
      const factor = factors[cause.id]
      const { title, reason, source } = finding.check
      return { title, answer: finding.words, factor, words: factorWords(factor), reason, source }
    })
    .sort((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)))
}

/** "points to it, × 3.2", "points away from it, × 0.1", "says nothing either way". */
export function factorWords(factor: number): string {
  if (factor > 0.9 && factor < 1.11) return 'says little either way'
  const shown = factor >= 10 ? factor.toFixed(0) : factor >= 0.095 ? factor.toFixed(1) : factor.toFixed(2)
  if (factor > 1) return `points to it, × ${shown}`
  return `points away from it, × ${factor < 0.005 ? 'less than 0.01' : shown}`
}
