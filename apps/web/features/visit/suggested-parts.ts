import type { VisitPage } from '@almanac/contract/visits'
import { bagName } from '@almanac/softener/kit/bag-plan'
import type { KitLine } from '@almanac/softener/kit/kit-types'
import { kitOf, type RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import type { PartLine } from './draft.ts'

type Stock = VisitPage['stock']

const KINDS: Record<string, string> = {
  gravel: 'gravel',
  'distributor-tube': 'tube',
  'tube-cap': 'cap',
  seals: 'seal',
  'silicone-grease': 'grease',
  sanitiser: 'sanitiser',
  'spent-resin-container': 'container',
}

/** Bag size in a kit line's words, ft³; the plan's own sizes are few and told apart by it. */
function bagItem(stock: Stock, bagFt3: number, resinKind: string) {
  const bags = stock.filter((item) => item.kind === 'resin' && item.bagFt3 !== null && Math.abs(item.bagFt3 - bagFt3) < 0.01)
  return bags.find((item) => item.resinKind === resinKind) ?? bags[0]
}

function line(key: string, item: Stock[number] | undefined, name: string, quantity: number, unit: string): PartLine {
  return { key, stockItemId: item?.id ?? null, name: item?.name ?? name, quantity: String(quantity), unit: item?.unit ?? unit }
}

const counted = (one: KitLine) => one.item !== 'resin' && !one.toReturn && KINDS[one.item]

/** The parts a rebed is likely to have used: its kit, matched with what the stores hold. The technician corrects it. */
export function suggestedParts(visit: VisitPage, firm: RebedFirm): PartLine[] {
  const { words } = firm
  const kit = visit.kind === 'rebed' && visit.bed ? kitOf(visit.bed, firm) : null
  if (!kit?.ok) return []
  const resinKind = visit.bed?.resinKind === 'unknown' ? 'gel-8' : (visit.bed?.resinKind ?? 'gel-8')
  const resin = kit.value.bagPlan.bags.map((bag) =>
    line(
      `resin-${bag.volumeFt3}`,
      bagItem(visit.stock, bag.volumeFt3, resinKind),
      words('resinLabel', { resin: words(resinKind), bag: bagName(bag.volumeFt3, words) }),
      bag.count,
      'bag',
    ),
  )
  const rest = kit.value.lines.filter(counted).map((one) =>
    line(
      one.item,
      visit.stock.find((item) => item.kind === KINDS[one.item]),
      one.label,
      one.quantity,
      one.unit,
    ),
  )
  return [...resin, ...rest]
}
