import { knownResinKind } from '@almanac/records/resin-kind'
import type { ShelfBag } from './bags-on-shelf.ts'
import type { KitItem, KitLine } from './kit-types.ts'
import type { ListedPrice } from './price-kit.ts'

/** An item of the stores, as far as a kit needs it. Price in minor units of the firm's currency for one `unit`; null where none is set. */
export type StoresItem = {
  readonly name: string
  readonly kind: string
  readonly unit: string
  readonly bagFt3: number | null
  readonly resinKind: string | null
  /** Of a distributor tube; null where it is not known. */
  readonly tubeOdIn: number | null
  readonly onHand: number
  readonly priceMinor: number | null
}

const ITEMS: Readonly<Record<string, KitItem>> = {
  resin: 'resin',
  gravel: 'gravel',
  tube: 'distributor-tube',
  cap: 'tube-cap',
  seal: 'seals',
  grease: 'silicone-grease',
  sanitiser: 'sanitiser',
  container: 'spent-resin-container',
}
const UNITS: Readonly<Record<string, KitLine['unit']>> = {
  bag: 'bag',
  'resin-bag': 'bag',
  lb: 'lb',
  piece: 'piece',
  each: 'piece',
  set: 'set',
  'fl oz': 'fl oz',
}

/** What the stores hold and cost, in the words of a kit. Items a kit does not know are left out: they price nothing. */
export function storesForKit(items: readonly StoresItem[]): { shelf: ShelfBag[]; prices: ListedPrice[] } {
  const shelf: ShelfBag[] = []
  const prices: ListedPrice[] = []
  for (const stored of items) {
    const item = ITEMS[stored.kind]
    const unit = UNITS[stored.unit]
    const resinKind = knownResinKind(stored.resinKind)
    if (item === 'resin' && stored.bagFt3 !== null) {
      const label = `${Number(stored.bagFt3.toFixed(3))} ft³ bag`
      shelf.push({ label, resinKind, volumeFt3: stored.bagFt3, onHand: stored.onHand })
    }
    if (item === undefined || unit === undefined || stored.priceMinor === null) continue
    prices.push({ item, unit, priceMinor: stored.priceMinor, resinKind, bagFt3: stored.bagFt3, outsideDiameterIn: stored.tubeOdIn })
  }
  return { shelf, prices }
}
