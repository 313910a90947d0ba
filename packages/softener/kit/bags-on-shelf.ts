import type { ResinKindId } from '@almanac/records/resin-kind'
import type { BagSize } from './bag-plan.ts'

/** One bag of resin the stores keep: which resin, what it holds, how many are there. */
export type ShelfBag = {
  readonly label: string
  readonly resinKind: ResinKindId | null
  readonly volumeFt3: number
  readonly onHand: number
}

/** Volumes closer than this are the same bag, ft³. */
const SAME_FT3 = 1e-3
const MOST_SIZES = 6

/**
 * The bag sizes to plan with: the firm's own with what is on the shelf of this resin, and sizes that only stand on the shelf. Bags of another or an
 * unknown resin never count. At most six sizes, those on the shelf first; largest first.
 */
export function bagsOnShelf(sizes: readonly BagSize[], shelf: readonly ShelfBag[], kind: ResinKindId): BagSize[] {
  const usable = shelf.filter((bag) => bag.resinKind === kind && bag.volumeFt3 > 0 && Number.isFinite(bag.volumeFt3) && bag.onHand >= 1)
  const all: { label: string; volumeFt3: number; onShelf: number }[] = sizes.map((size) => ({ ...size, onShelf: 0 }))
  for (const bag of usable) {
    const count = Math.floor(bag.onHand)
    const known = all.find((size) => Math.abs(size.volumeFt3 - bag.volumeFt3) < SAME_FT3)
    if (known) known.onShelf += count
    else all.push({ label: bag.label, volumeFt3: bag.volumeFt3, onShelf: count })
  }
  const first = (size: { onShelf: number }) => (size.onShelf > 0 ? 0 : 1)
  return all
    .sort((a, b) => first(a) - first(b))
    .slice(0, MOST_SIZES)
    .sort((a, b) => b.volumeFt3 - a.volumeFt3)
}
