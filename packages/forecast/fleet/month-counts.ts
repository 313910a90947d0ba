import type { CountDistribution } from './count-distribution.ts'
import { type CountTable, countQuantile, countTable, mixture } from './poisson-binomial.ts'

/** What a bed brings to the fleet's months (BedForecast has both). */
export interface MonthChances {
  readonly monthChances: ArrayLike<number>
  /**
   * The same at each shared parameter node, nodeMonthChances[node * monthChances.length + month]. Doubt about the parameters moves all beds together;
   * without it the band holds chance alone and is too narrow for a fleet.
   */
  readonly nodeMonthChances?: ArrayLike<number> | undefined
}

export interface MonthCount {
  /** Months after the first month of the forecasts. */
  readonly month: number
  readonly mean: number
  readonly p10: number
  readonly p50: number
  readonly p90: number
}

export interface MonthCounter {
  /** Takes one bed; its arrays are read at once and may be reused. */
  add(bed: MonthChances): void
  /** Adds the beds of another counter of as many months. */
  merge(other: MonthCounter): void
  counts(): MonthCount[]
  distribution(month: number): CountDistribution
  /** For merge; null before the first bed. */
  parts(): { readonly nodes: number; readonly table: CountTable; readonly means: Float64Array } | null
}

/**
 * Failures per calendar month of a fleet: given one parameter set beds fail independently, so their count is Poisson-binomial, exact; the band is the
 * equal mixture of these over the shared parameter nodes. Time O(beds × nodes × months), memory O(nodes × months × log beds): beds are streamed. The first bed
 * decides whether parameter nodes are used, and all beds of one counter must agree on their number.
 */
export function countMonths(months: number): MonthCounter {
  let nodes = 0
  let table: CountTable | null = null
  const means = new Float64Array(months)
  const distribution = (month: number) => {
    const counted = table
    if (counted === null) return { first: 0, chance: Float64Array.of(1) }
    return mixture(Array.from({ length: nodes }, (_, k) => counted.distribution(month * nodes + k)))
  }
  /** The table, of as many nodes as the first bed has. */
  const open = (rows: number): CountTable => {
    if (table === null) {
      nodes = rows
      table = countTable(months * nodes)
    }
    if (rows !== nodes)
      throw new RangeError(`A bed brings ${rows} parameter nodes where the others have ${nodes}; forecast them with the same parameters.`)
    return table
  }
  return {
    add(bed) {
      const stride = bed.monthChances.length
      const chances = bed.nodeMonthChances ?? bed.monthChances
      if (stride < months) throw new RangeError(`A bed's forecast reaches ${stride} months; ${months} were asked for.`)
      const counted = open(stride === 0 ? 0 : chances.length / stride)
      for (let m = 0; m < months; m++) {
        means[m] = (means[m] as number) + (bed.monthChances[m] as number)
        for (let k = 0; k < nodes; k++) counted.add(m * nodes + k, chances[k * stride + m] as number)
      }
    },
    merge(other) {
      const parts = other.parts()
      if (parts === null) return
      open(parts.nodes).merge(parts.table)
      for (let m = 0; m < months; m++) means[m] = (means[m] as number) + (parts.means[m] as number)
    },
    counts() {
      return Array.from(means, (mean, month) => {
        const counts = distribution(month)
        return { month, mean, p10: countQuantile(counts, 0.1), p50: countQuantile(counts, 0.5), p90: countQuantile(counts, 0.9) }
      })
    },
    distribution,
    parts: () => (table === null ? null : { nodes, table, means }),
  }
}
