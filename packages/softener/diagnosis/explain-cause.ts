import type { Moved } from './cause-posterior.ts'
import type { Cause, DiagnosisSource } from './causes.ts'
import type { CheckId } from './check-types.ts'
import type { DiagnosisWords } from './diagnosis-words.ts'

/** What one answer did to one cause: its chance was multiplied by `factor`; `answer` and `words` are said in the reader's language. */
export type Contribution = { check: CheckId; answer: string; factor: number; words: string; source: DiagnosisSource }

/** What each finding did to a cause, the strongest first. */
export function contributionsTo(cause: Cause, moves: readonly Moved[], words: DiagnosisWords): Contribution[] {
  return moves
    .map(({ finding, factors }) => {
      const factor = factors[cause.id]
      const { id, source } = finding.check
      return { check: id, answer: finding.words, factor, words: factorWords(factor, words), source }
    })
    .sort((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)))
}

/** "points to it, × 3.2", "points away from it, × 0.1", "says little either way". */
export function factorWords(value: number, words: DiagnosisWords): string {
  if (value > 0.9 && value < 1.11) return words('pointsNowhere')
  const factor = value >= 10 ? value.toFixed(0) : value >= 0.095 ? value.toFixed(1) : value.toFixed(2)
  if (value > 1) return words('pointsTo', { factor })
  return value < 0.005 ? words('pointsFarAway', { factor: '0.01' }) : words('pointsAway', { factor })
}
