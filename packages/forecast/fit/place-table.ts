import { LIFE_FAMILIES, type LifeFamily, type LifeFamilyName } from '../lifetime/life-family.ts'
import { spreadOf } from '../lifetime/spread.ts'
import { STRIDE, type WearSums, wearSums } from './wear-sums.ts'
import type { WearTable } from './wear-table.ts'

export interface Scales {
  /** 1/σ of ln life. */
  readonly steepness: number
  /** z of the median. */
  readonly middle: number
  readonly logMedian: number
  /** ln ageing rate of a step of crosslink and of ln throughput. */
  readonly byCrosslink: number
  readonly byUse: number
}

/** A table under one set of log parameters and one family, ready to be summed. */
export interface PlacedTable extends Scales {
  readonly table: WearTable
  readonly family: LifeFamily
  readonly theta: ArrayLike<number>
  readonly wear: WearSums
  /** z of each sum without shift; −Infinity where there is no wear. */
  readonly base: Float64Array
}

export function placeTable(table: WearTable, family: LifeFamilyName, theta: ArrayLike<number>): PlacedTable {
  const wear = wearSums(table, theta)
  const scales = scalesOf(family, theta)
  const { steepness, middle } = scales
  const base = new Float64Array(table.firstPiece.length - 1)
  for (let r = 0; r < table.count; r++) {
    const traits = traitsOf(table, scales, r)
    const last = 2 * (table.firstCase[r + 1] as number)
    for (let sum = 2 * (table.firstCase[r] as number); sum < last; sum++)
      base[sum] = steepness * ((wear.sums[sum * STRIDE] as number) + traits) + middle
  }
  return { ...scales, table, family: LIFE_FAMILIES[family], theta, wear, base }
}

/** What makes z of wear, under one set of log parameters. */
export function scalesOf(family: LifeFamilyName, theta: ArrayLike<number>): Scales {
  return {
    steepness: Math.exp(theta[1] as number) / spreadOf(family),
    middle: LIFE_FAMILIES[family].quantile(0.5),
    logMedian: theta[0] as number,
    byCrosslink: -Math.exp(theta[5] as number),
    byUse: Math.exp(theta[6] as number),
  }
}

/** ln of a record's ageing rate from what its bed is, less ln median. */
export function traitsOf(table: WearTable, { byCrosslink, byUse, logMedian }: Scales, r: number): number {
  return byCrosslink * (table.crosslink[r] as number) + byUse * (table.use[r] as number) - logMedian
}
