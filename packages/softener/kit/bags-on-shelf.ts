import type { ResinKindId } from '@almanac/records/resin-kind'
import type { BagCount } from './bag-plan.ts'

/** One bag of resin the stores keep: which resin, what it holds, how many are there. */
export type ShelfBag = {
  readonly label: string
  readonly resinKind: ResinKindId | null
  readonly volumeFt3: number
  readonly onHand: number
}

/** Volumes closer than this are the same bag, ft³. */
const SAME_FT3 = 1e-3

/**
 * How many of the bags stand on the shelf. The shelf is shown and does not choose the bags: a kit that changed with each delivery would not be the one that was
 * booked. Bags of another or an unknown resin never count.
 */
export function bagsFromShelf(bag: Pick<BagCount, 'volumeFt3' | 'count'>, shelf: readonly ShelfBag[], kind: ResinKindId): number {
  const same = shelf.filter((one) => one.resinKind === kind && Math.abs(one.volumeFt3 - bag.volumeFt3) < SAME_FT3 && one.onHand >= 1)
  return Math.min(
    bag.count,
    same.reduce((sum, one) => sum + Math.floor(one.onHand), 0),
  )
}
