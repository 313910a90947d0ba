import type { KitLine, RebedKit } from './kit-types.ts'
import { pricesLine } from './price-kit.ts'
import { type StoresItem, storesForKit } from './stores-for-kit.ts'

/** What a kit takes of one item of the stores, in the item's unit. */
export type Taken<Item> = { item: Item; quantity: number }

/** What the stores say of an item that a kit may take; its price plays no part. */
export type KeptItem = Omit<StoresItem, 'priceMinor'>

/**
 * Which items of the stores a kit takes, and which of its lines the stores do not keep. Of several that would do, the one with most on hand. What comes
 * back with the crew is not taken.
 */
export function takeFromStores<Item extends KeptItem>(kit: RebedKit, items: readonly Item[]): { taken: Taken<Item>[]; notKept: KitLine[] } {
  const taken = new Map<Item, number>()
  const notKept: KitLine[] = []
  for (const line of kit.lines) {
    if (line.toReturn || !(line.quantity > 0)) continue
    const found = items.filter((item) => keeps(item, line, kit)).sort((a, b) => b.onHand - a.onHand)[0]
    if (found) taken.set(found, (taken.get(found) ?? 0) + line.quantity)
    else notKept.push(line)
  }
  return { taken: [...taken].map(([item, quantity]) => ({ item, quantity })), notKept }
}

/** By the same rules as a price, whether or not one is set. */
function keeps(item: KeptItem, line: KitLine, kit: RebedKit): boolean {
  const price = storesForKit([{ ...item, priceMinor: 0 }]).prices[0]
  return price !== undefined && pricesLine(price, line, kit)
}
