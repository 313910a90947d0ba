import type { VisitPage } from '@almanac/contract/visits'
import type { ProcedureAskId } from '@almanac/records/procedure-ask'
import { stopOfAnswer } from '@almanac/records/visit-stop'
import type { Answers } from '@almanac/service-rules/close-out/record-from-answers'
import { type AnswerTexts, outcomesAfter, type SafeEnding, safeEnding } from '@almanac/service-rules/close-out/safe-ending'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { isEmptied } from './procedure-of.ts'

/** The answers' texts as stored. */
export const textsOf = (answers: Answers): AnswerTexts =>
  Object.fromEntries(Object.entries(answers).map(([ask, answer]) => [ask, answer?.text ?? '']))

/** An answer that ended the work: what it leads to, and the step and question to which one tap goes back. */
export type StandingStop = { ending: SafeEnding; step: number; ask: ProcedureAskId }

type Ending = Pick<VisitPage, 'kind' | 'bed' | 'twin'> & { emptied?: VisitPage['emptied'] }

/**
 * How the visit may end after its answers. A tank is condemned by its name: on a visit to several at once it is made safe, and the office asks which. In a tank that stands
 * empty no bed is found to be sound.
 */
export function outcomesOfVisit({ kind, bed, twin, emptied }: Ending, answers: AnswerTexts) {
  return outcomesAfter(kind, answers)
    .filter((one) => one !== 'condemned' || bed !== null || twin === null)
    .filter((one) => one !== 'bed-not-at-fault' || !isEmptied({ emptied }))
}

/** The first stop among the answers, in the order of the steps; null while the work goes on. */
export function standingStop(visit: Ending, procedure: Procedure, answers: Answers): StandingStop | null {
  const texts = textsOf(answers)
  for (const [step, { asks }] of procedure.steps.entries())
    for (const { id } of asks) {
      const stop = stopOfAnswer(id, texts[id] ?? '')
      if (stop) return { ending: { ...safeEnding(stop, visit.kind, texts), outcomes: outcomesOfVisit(visit, texts) }, step, ask: id }
    }
  return null
}
