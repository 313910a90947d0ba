import { nameEighths } from '@almanac/units/format-number'
import { LITRES_PER_FT3 } from '@almanac/units/volume'
import type { Words } from '@almanac/words/words'

/** A bag the firm stocks. */
export type BagSize = { readonly volumeFt3: number }

/** Bags of the trade where resin is sold by the cubic foot: whole, half and quarter (common practice, no source). */
export const CUBIC_FOOT_BAGS: readonly BagSize[] = [{ volumeFt3: 1 }, { volumeFt3: 0.5 }, { volumeFt3: 0.25 }]
/** The bag of the trade where resin is sold by the litre (common practice, no source). */
export const LITRE_BAGS: readonly BagSize[] = [{ volumeFt3: 25 / LITRES_PER_FT3 }]
/** Bags that the trade fills in part. */
const PART_BAGS = [0.5, 0.25]

/** A bag as the trade names it: "1 ft³ bag", "½ ft³ part bag", "25 L bag". */
export function bagName(volumeFt3: number, words: Words<'kit'>): string {
  const same = (one: number) => Math.abs(one - volumeFt3) < SAME_FT3
  const litres = volumeFt3 * LITRES_PER_FT3
  const wholeLitres = Math.abs(litres - Math.round(litres)) < 1e-3
  const eighths = Math.abs(volumeFt3 * 8 - Math.round(volumeFt3 * 8)) < SAME_FT3
  const size = wholeLitres ? `${Math.round(litres)} L` : `${eighths ? nameEighths(volumeFt3) : Number(volumeFt3.toFixed(3))} ft³`
  return words(PART_BAGS.some(same) ? 'partBag' : 'bag', { size })
}

export type BagCount = { volumeFt3: number; count: number }
export type BagPlan = { bags: BagCount[]; bagCount: number; volumeFt3: number; wasteFt3: number }

/** Bags are not filled more exactly than this share, so a plan may fall short of the need by it; common practice, no source. */
const BAG_TOLERANCE = 0.02
/** Volumes closer than this are the same, ft³: far below what anyone can pour. */
const SAME_FT3 = 1e-6
const MOST_BAGS = 400
const MOST_SIZES = 6

/**
 * The bags that cover a need with the least left over; among equals the fewest bags. Exact
 * search with bounds. Null when the need or the sizes make no plan: need not above zero, no usable size, or hundreds of bags.
 */
export function planBags(needFt3: number, sizes: readonly BagSize[] = CUBIC_FOOT_BAGS): BagPlan | null {
  const usable = sizes.filter((size) => size.volumeFt3 > 0 && Number.isFinite(size.volumeFt3))
  const sorted = [...usable].sort((a, b) => b.volumeFt3 - a.volumeFt3).slice(0, MOST_SIZES)
  const largest = sorted[0]
  if (largest === undefined || !(needFt3 > 0) || needFt3 / largest.volumeFt3 > MOST_BAGS) return null
  const leastFt3 = needFt3 * (1 - BAG_TOLERANCE)
  const search: Search = { sorted, leastFt3, needFt3, counts: sorted.map(() => 0), best: null }
  descend(search, 0, 0, 0)
  return search.best === null ? null : describe(sorted, search.best, needFt3)
}

type Candidate = { counts: number[]; over: number; bags: number }
type Search = { sorted: BagSize[]; leastFt3: number; needFt3: number; counts: number[]; best: Candidate | null }

function descend(search: Search, index: number, filled: number, bags: number): void {
  const size = search.sorted[index]
  if (size === undefined) return
  const remaining = Math.max(0, search.leastFt3 - filled)
  const most = Math.ceil(remaining / size.volumeFt3 - SAME_FT3)
  const last = index === search.sorted.length - 1
  for (let count = most; count >= (last ? most : 0); count -= 1) {
    const nextFilled = filled + count * size.volumeFt3
    search.counts[index] = count
    if (nextFilled >= search.leastFt3 - SAME_FT3) consider(search, index, nextFilled, bags + count)
    else if (!last && !hopeless(search, index + 1, nextFilled, bags + count)) descend(search, index + 1, nextFilled, bags + count)
    search.counts[index] = 0
  }
}

/** True when nothing below can beat a plan already found without waste: at least as many bags. */
function hopeless(search: Search, index: number, filled: number, bags: number): boolean {
  const { best } = search
  if (best === null || best.over > SAME_FT3) return false
  const next = search.sorted[index]
  const fewest = next === undefined ? 0 : Math.ceil((search.leastFt3 - filled) / next.volumeFt3 - SAME_FT3)
  return bags + fewest >= best.bags
}

function consider(search: Search, index: number, filled: number, bags: number): void {
  const over = Math.max(0, filled - search.needFt3)
  const { best } = search
  const better = best === null || over < best.over - SAME_FT3 || (over <= best.over + SAME_FT3 && bags < best.bags)
  if (better) search.best = { counts: search.counts.map((count, at) => (at <= index ? count : 0)), over, bags }
}

function describe(sorted: BagSize[], best: Candidate, needFt3: number): BagPlan {
  const bags = sorted.flatMap((size, at) => {
    const count = best.counts[at] ?? 0
    return count > 0 ? [{ volumeFt3: size.volumeFt3, count }] : []
  })
  const volumeFt3 = bags.reduce((sum, bag) => sum + bag.count * bag.volumeFt3, 0)
  return { bags, bagCount: best.bags, volumeFt3, wasteFt3: Math.max(0, volumeFt3 - needFt3) }
}
