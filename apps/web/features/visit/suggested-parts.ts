import type { VisitPage } from '@almanac/contract/visits'
import { takeFromStores } from '@almanac/softener/kit/take-from-stores'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { numberText } from '@almanac/units/read-number'
import type { PartLine } from './draft.ts'

/** The parts a rebed is likely to have used: what its kit takes from the stores, and by its own words what they do not keep. The technician corrects it. */
export function suggestedParts(visit: VisitPage, firm: RebedFirm): PartLine[] {
  const kit = visit.kind === 'rebed' && visit.bed ? kitOf(visit.bed, firm) : null
  if (!kit?.ok) return []
  const { taken, notKept } = takeFromStores(kit.value, visit.stock)
  const typed = (quantity: number) => numberText(quantity, firm.display.locale)
  return [
    ...taken.map(({ item: { id, name, unit }, quantity }) => ({ key: id, stockItemId: id, name, quantity: typed(quantity), unit })),
    ...notKept.map(({ item, label, quantity, unit }, at) => ({
      ...{ key: `${item}-${at}`, stockItemId: null, name: label },
      ...{ quantity: typed(quantity), unit },
    })),
  ]
}
