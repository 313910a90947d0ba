import type { ResinKindId } from '@almanac/records/resin-kind'
import type { KitItem, KitLine, RebedKit } from './kit-types.ts'

/** A price of the firm's list: one `unit` of `item`, in minor units of the list's currency. Resin also says which resin and how large a bag. */
export type ListedPrice = {
  readonly item: KitItem
  readonly unit: KitLine['unit']
  readonly priceMinor: number
  readonly resinKind?: ResinKindId | null
  readonly bagFt3?: number | null
  /** For a distributor tube: the one it is; left out where the list does not say. */
  readonly outsideDiameterIn?: number | null
}
export type PriceList = { readonly currency: string; readonly prices: readonly ListedPrice[] }

/** `priceMinor` is null where the list has none; lines that come back with the crew are not charged. */
export type PricedLine = { line: KitLine; charged: boolean; priceMinor: number | null; note: string | null }
export type PricedKit = {
  currency: string
  lines: PricedLine[]
  /** Sum of the lines whose price is known: a least, and the whole only while `unknown` is empty. */
  knownMinor: number
  /** Labels of charged lines without a price. */
  unknown: string[]
  /** The whole price, or null while any line's price is unknown. */
  totalMinor: number | null
}

const SAME_FT3 = 1e-3
const SAME_TUBE_IN = 0.05

/** The kit with a price for each line that is used up. A missing price is named, never taken as nothing. */
export function priceKit(kit: RebedKit, list: PriceList): PricedKit {
  const lines = kit.lines.map((line) => priced(line, kit, list))
  const charged = lines.filter((one) => one.charged)
  const unknown = charged.filter((one) => one.priceMinor === null).map((one) => one.line.label)
  const knownMinor = charged.reduce((sum, one) => sum + (one.priceMinor ?? 0), 0)
  return { currency: list.currency, lines, knownMinor, unknown, totalMinor: unknown.length === 0 ? knownMinor : null }
}

function priced(line: KitLine, kit: RebedKit, list: PriceList): PricedLine {
  if (line.toReturn) return { line, charged: false, priceMinor: null, note: 'comes back' }
  const found = list.prices.filter((price) => pricesLine(price, line, kit)).map((price) => price.priceMinor)
  if (found.length === 0) return { line, charged: true, priceMinor: null, note: 'price unknown' }
  const dearest = Math.max(...found)
  const several = found.some((price) => price !== dearest)
  return {
    line,
    charged: true,
    priceMinor: Math.round(dearest * line.quantity),
    note: several ? 'several in the stores: the most expensive one counts' : null,
  }
}

/** Whether a listed price is for a line of the kit: the same item in the same unit, resin and bag, tube of the same diameter. */
export function pricesLine(price: ListedPrice, line: KitLine, kit: RebedKit): boolean {
  if (price.item !== line.item || !(price.priceMinor >= 0 && Number.isFinite(price.priceMinor))) return false
  // Small parts are counted as pieces in the stores and as a set in the kit.
  const sameUnit = price.unit === line.unit || (price.unit === 'piece' && line.unit === 'set')
  if (line.item === 'distributor-tube' && price.outsideDiameterIn != null)
    return sameUnit && Math.abs(price.outsideDiameterIn - kit.tubeOutsideDiameterIn) < SAME_TUBE_IN
  if (line.item !== 'resin') return sameUnit
  const bagFt3 = (line.volumeFt3 ?? 0) / line.quantity
  return sameUnit && price.resinKind === kit.resinKind && Math.abs((price.bagFt3 ?? 0) - bagFt3) < SAME_FT3
}
