import type { VisitPage } from '@almanac/contract/visits'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import { visitProcedure } from '@almanac/softener/procedure/visit-procedure'
import type { UnitSystem } from '@almanac/units/unit-system'
import { kitOf } from '@/client/job-words'

const SHORT = ['annual-visit', 'cleaning', 'inspection', 'repair', 'emergency'] as const

/** The steps of this visit: a rebed's own, or the short ones of its kind. */
export function procedureOf(visit: VisitPage, unitSystem: UnitSystem, figures: FirmFigures): Procedure {
  const kit = visit.bed ? kitOf(visit.bed, unitSystem, figures) : null
  const context = {
    diameterIn: visit.bed?.diameterIn ?? null,
    heightIn: visit.bed?.heightIn ?? null,
    resinVolumeFt3: visit.bed?.volumeFt3 ?? null,
    gravelLb: visit.bed?.gravelLb ?? null,
    newTubeLengthIn: kit?.ok ? kit.value.tubeLengthIn : null,
    oldTubeLengthIn: visit.tubeCutIn,
    waterSource: visit.waterSource,
    ironMgL: visit.ironMgL,
    figures,
    unitSystem,
  }
  if (visit.kind === 'rebed') return rebedProcedure(context)
  return visitProcedure(SHORT.find((kind) => kind === visit.kind) ?? 'other', context)
}

/** Whether the visit puts in a new bed, and so asks for the facts of both. */
export const changesBed = (kind: VisitPage['kind']) => kind === 'rebed' || kind === 'installation'
