import type { CauseId } from './causes.ts'
import type { Check } from './check-types.ts'
import type { WeighedCheck } from './evidence.ts'
import { CAUSE_ORDER } from './likelihood-rows.ts'

export type Chances = Record<CauseId, number>
/** How a finding moved each cause: its chance after is its chance before times this. */
export type Moved = { finding: WeighedCheck; factors: Chances }

/** Chance of a finding in each cause: over the check's answers, how often each is found there and how well it goes with what was read. */
export function findingLikelihood(check: Check, weights: readonly number[]): Chances {
  const of = (cause: CauseId) => check.answers.reduce((sum, answer, at) => sum + answer.chances[cause] * (weights[at] ?? 0), 0)
  return Object.fromEntries(CAUSE_ORDER.map((cause) => [cause, of(cause)])) as Chances
}

/** Chances after one finding, by Bayes; unchanged where the finding is possible in no cause. */
export function afterFinding(before: Chances, check: Check, weights: readonly number[]): { after: Chances; factors: Chances } {
  const likelihood = findingLikelihood(check, weights)
  const mean = CAUSE_ORDER.reduce((sum, cause) => sum + before[cause] * likelihood[cause], 0)
  const factor = (cause: CauseId) => (mean > 0 ? likelihood[cause] / mean : 1)
  const factors = Object.fromEntries(CAUSE_ORDER.map((cause) => [cause, factor(cause)])) as Chances
  const after = Object.fromEntries(CAUSE_ORDER.map((cause) => [cause, before[cause] * factors[cause]])) as Chances
  return { after, factors }
}

/** Chances after all findings, each taken by itself given the cause, and what each of them did. */
export function causePosterior(prior: Chances, findings: readonly WeighedCheck[]): { chances: Chances; moves: Moved[] } {
  let chances = prior
  const moves = findings.map((finding) => {
    const { after, factors } = afterFinding(chances, finding.check, finding.weights)
    chances = after
    return { finding, factors }
  })
  return { chances, moves }
}
