import type { VisitPage } from '@almanac/contract/visits'
import type { ProcedureAskId } from '@almanac/records/procedure-ask'
import { stopOfAnswer } from '@almanac/records/visit-stop'
import type { Answers } from '@almanac/service-rules/close-out/record-from-answers'
import { type AnswerTexts, outcomesAfter, type SafeEnding, safeEnding } from '@almanac/service-rules/close-out/safe-ending'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'

/** The answers' texts as stored. */
export const textsOf = (answers: Answers): AnswerTexts =>
  Object.fromEntries(Object.entries(answers).map(([ask, answer]) => [ask, answer?.text ?? '']))

/** An answer that ended the work: what it leads to, and the step and question to which one tap goes back. */
export type StandingStop = { ending: SafeEnding; step: number; ask: ProcedureAskId }

/** The first stop among the answers, in the order of the steps; null while the work goes on. */
export function standingStop(kind: VisitPage['kind'], procedure: Procedure, answers: Answers): StandingStop | null {
  const texts = textsOf(answers)
  for (const [step, { asks }] of procedure.steps.entries())
    for (const { id } of asks) {
      const stop = stopOfAnswer(id, texts[id] ?? '')
      if (stop) return { ending: { ...safeEnding(stop, kind, texts), outcomes: outcomesAfter(kind, texts) }, step, ask: id }
    }
  return null
}
