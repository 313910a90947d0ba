/** What will be taken from the stores: `sure` for a booked rebed, otherwise what the forecast expects. Days are whole numbers in order. */
export type Demand = { readonly day: number; readonly quantity: number; readonly sure: boolean }

export type Kept = {
  readonly onHand: number
  /** Days from ordering to the shelf. */
  readonly leadDays: number
}

export type OrderPlan = {
  /** First day on which booked work finds too little; null where all of it is covered. */
  readonly shortForBookedOn: number | null
  /** First day on which the shelf is expected to fall short, booked and expected work together; null within the horizon never. */
  readonly outOn: number | null
  /** Last day to order so that it comes in time; may lie in the past. */
  readonly orderBy: number | null
  /** How much is missing until the horizon's end; 0 where nothing is. */
  readonly missing: number
  /** What is left of the shelf once booked work is served; below 0 where it is not enough. */
  readonly free: number
}

const isUsable = ({ day, quantity }: Demand) => Number.isFinite(day) && Number.isFinite(quantity) && quantity > 0

/** A quantity that rounding of many small demands brought about is none. */
const NOTHING = 1e-9

/**
 * Runs the shelf down day by day against what will be taken. Booked work is served before expected work of the same day; demand that is no number or
 * not above zero is left out. `until` is the last day looked at.
 */
export function planOrder({ onHand, leadDays }: Kept, demands: readonly Demand[], until: number): OrderPlan {
  const inOrder = demands
    .filter((one) => isUsable(one) && one.day <= until)
    .sort((a, b) => a.day - b.day || Number(b.sure) - Number(a.sure))
  let left = Math.max(0, onHand)
  let free = left
  let outOn: number | null = null
  let shortForBookedOn: number | null = null
  for (const { day, quantity, sure } of inOrder) {
    left -= quantity
    if (sure) free -= quantity
    if (left < -NOTHING) outOn ??= day
    if (sure && free < -NOTHING) shortForBookedOn ??= day
  }
  const first = outOn === null ? shortForBookedOn : shortForBookedOn === null ? outOn : Math.min(outOn, shortForBookedOn)
  return {
    shortForBookedOn,
    outOn,
    orderBy: first === null ? null : first - Math.max(0, leadDays),
    missing: left < -NOTHING ? -left : 0,
    free,
  }
}
