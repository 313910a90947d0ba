import type { VisitPage } from '@almanac/contract/visits'
import { oneOf } from '@almanac/records/choices'
import { emergencies } from '@almanac/records/procedure-ask'
import type { Answers } from '@almanac/service-rules/close-out/record-from-answers'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { procedureForJob } from '@almanac/softener/procedure/procedure-for-job'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import type { ProcedureWords } from '@almanac/softener/procedure/procedure-words'
import { procedureContextOf } from '@almanac/softener/rebed/rebed-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { useWords } from '@almanac/words/use-words'

/** The steps of this visit; those of an emergency follow from what happened, once that is answered. */
export function procedureOf(
  visit: VisitPage,
  display: AmountDisplay,
  figures: FirmFigures,
  words: ProcedureWords,
  answers: Answers = {},
): Procedure {
  const context = procedureContextOf(
    visit.bed,
    visit.water,
    { figures, display, words: words.kit },
    { twin: visit.twin, emptied: isEmptied(visit) },
  )
  return procedureForJob(visit.kind, { ...context, emergency: oneOf(emergencies, answers.happened?.text) }, words)
}

/** Whether an earlier visit left the tank without its bed; pages that a tablet kept from the release before do not say. */
export const isEmptied = ({ emptied }: { emptied?: VisitPage['emptied'] }): boolean => emptied != null

/** What the procedures say, in the language of whoever looks. */
export function useProcedureWords(): ProcedureWords {
  return {
    steps: useWords('steps'),
    cautions: useWords('cautions'),
    asks: useWords('asks'),
    beadCondition: useWords('beadCondition'),
    kit: useWords('kit'),
  }
}
