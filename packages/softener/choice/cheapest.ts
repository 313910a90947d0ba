import { type Spread, spreadOf } from './spread.ts'

/** One way to go: what it costs a year, over everything that may come. */
export type CostOption<Key extends string> = {
  key: Key
  /** In minor units a year; null where a price is missing. */
  perYear: Spread | null
  /** How often it is the cheapest of those with a price, 0 to 1. */
  chanceCheapest: number | null
  /** Prices that are missing, each with where to enter it. */
  unpriced: string[]
}

/**
 * Spreads and chances from costs that belong together: `costs[i][k]` is option k in the i-th equally likely world; NaN where it has no price. Ties share.
 */
export function judgeCosts<Key extends string>(
  keys: readonly Key[],
  unpriced: Readonly<Record<Key, string[]>>,
  costs: readonly (readonly number[])[],
): CostOption<Key>[] {
  const wins = keys.map(() => 0)
  const priced = keys.map((key) => unpriced[key].length === 0)
  for (const world of costs) {
    const candidates = world.map((cost, k) => (priced[k] && Number.isFinite(cost) ? cost : Number.POSITIVE_INFINITY))
    const least = Math.min(...candidates)
    if (!Number.isFinite(least)) continue
    const first = candidates.filter((cost) => cost <= least * (1 + 1e-9)).length
    candidates.forEach((cost, k) => {
      if (cost <= least * (1 + 1e-9)) wins[k] = (wins[k] ?? 0) + 1 / first
    })
  }
  const several = priced.filter(Boolean).length > 1
  return keys.map((key, k) => {
    const perYear = priced[k] ? spreadOf(costs.map((world) => world[k] ?? Number.NaN)) : null
    const chanceCheapest = several && perYear !== null && costs.length > 0 ? (wins[k] ?? 0) / costs.length : null
    return { key, perYear, chanceCheapest, unpriced: unpriced[key] }
  })
}

/** The option with the least mean cost; null where fewer than two have a price. */
export function cheapestOf<Key extends string>(options: readonly CostOption<Key>[]): CostOption<Key> | null {
  const priced = options.filter((option) => option.perYear !== null)
  if (priced.length < 2) return null
  return priced.reduce((best, option) => ((option.perYear?.mean ?? 0) < (best.perYear?.mean ?? 0) ? option : best))
}
