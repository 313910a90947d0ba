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

/** How the visit may end after its answers. A tank is condemned by its name: on a visit to several at once it is made safe, and the office asks which. */
export function outcomesOfVisit({ kind, bed, twin }: Pick<VisitPage, 'kind' | 'bed' | 'twin'>, answers: AnswerTexts) {
  return outcomesAfter(kind, answers).filter((one) => one !== 'condemned' || bed !== null || twin === null)
}

/** The first stop among the answers, in the order of the steps; null while the work goes on. */
export function standingStop(visit: Pick<VisitPage, 'kind' | 'bed' | 'twin'>, procedure: Procedure, answers: Answers): StandingStop | null {
  const texts = textsOf(answers)
  for (const [step, { asks }] of procedure.steps.entries())
    for (const { id } of asks) {
      const stop = stopOfAnswer(id, texts[id] ?? '')
      if (stop) return { ending: { ...safeEnding(stop, visit.kind, texts), outcomes: outcomesOfVisit(visit, texts) }, step, ask: id }
    }
  return null
}
