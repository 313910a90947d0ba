import { type ResinKindId, resinKinds } from '@almanac/records/resin-kind'
import type { Result } from '@almanac/units/result'
import { bagsFromShelf, type ShelfBag } from './bags-on-shelf.ts'
import type { RebedKit, RebedKitInput } from './kit-types.ts'
import { type PricedKit, type PriceList, priceKit } from './price-kit.ts'
import { rebedKit } from './rebed-kit.ts'

export type KitAlternative = {
  kind: ResinKindId
  kit: RebedKit
  priced: PricedKit
  /** Bags of the plan that stand on the shelf. */
  bagsFromShelf: number
  /** More to carry in than with the kind compared against, lb. */
  moreWeightLb: number
  /** More to pay than with it; null while a price of either is unknown. */
  moreMinor: number | null
}

/** The kit once with each kind of resin, against `against` (8% where not given). Refuses as the kit does. */
export function compareKits(
  input: RebedKitInput,
  list: PriceList,
  shelf: readonly ShelfBag[] = [],
  against: ResinKindId = 'gel-8',
): Result<KitAlternative[]> {
  const made = resinKinds.map((kind) => ({ kind, kit: rebedKit({ ...input, resinKind: kind }) }))
  const base = made.find((one) => one.kind === against)?.kit
  if (!base?.ok) return base ?? { ok: false, reason: 'There’s no such resin to compare; choose 8%, 10% or fine mesh.' }
  const basePrice = priceKit(base.value, list)
  const value: KitAlternative[] = []
  for (const { kind, kit } of made) {
    if (!kit.ok) return kit
    const priced = priceKit(kit.value, list)
    const known = priced.totalMinor !== null && basePrice.totalMinor !== null
    value.push({
      kind,
      kit: kit.value,
      priced,
      bagsFromShelf: kit.value.bagPlan.bags.reduce((sum, bag) => sum + bagsFromShelf(bag, shelf, kind), 0),
      moreWeightLb: kit.value.loadWeightLb - base.value.loadWeightLb,
      moreMinor: known ? (priced.totalMinor ?? 0) - (basePrice.totalMinor ?? 0) : resinDifference(priced, basePrice),
    })
  }
  return { ...base, value }
}

/** What unknown lines have in common drops out of the difference; null when a bag of resin has no price on either side. */
function resinDifference(priced: PricedKit, base: PricedKit): number | null {
  const resin = (kit: PricedKit) => kit.lines.filter((one) => one.line.item === 'resin')
  const [mine, its] = [resin(priced), resin(base)]
  if ([...mine, ...its].some((one) => one.priceMinor === null)) return null
  const sum = (lines: PricedKit['lines']) => lines.reduce((total, one) => total + (one.priceMinor ?? 0), 0)
  return sum(mine) - sum(its)
}
