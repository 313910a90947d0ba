import type { VisitPage } from '@almanac/contract/visits'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import type { ProcedureWords } from '@almanac/softener/procedure/procedure-words'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import { visitProcedure } from '@almanac/softener/procedure/visit-procedure'
import { procedureContextOf } from '@almanac/softener/rebed/rebed-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { useWords } from '@almanac/words/use-words'

const SHORT = ['annual-visit', 'cleaning', 'inspection', 'repair', 'emergency'] as const

/** The steps of this visit: a rebed's own, or the short ones of its kind. */
export function procedureOf(visit: VisitPage, display: AmountDisplay, figures: FirmFigures, words: ProcedureWords): Procedure {
  const context = procedureContextOf(visit.bed, visit.water, { figures, display, words: words.kit })
  if (visit.kind === 'rebed') return rebedProcedure(context, words)
  return visitProcedure(SHORT.find((kind) => kind === visit.kind) ?? 'other', context, words)
}

/** Whether the visit puts in a new bed, and so asks for the facts of both. */
export const changesBed = (kind: VisitPage['kind']) => kind === 'rebed' || kind === 'installation'

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
