import { PARAMETER_NODES } from '@almanac/forecast/priors/parameter-nodes'

/** How many months ahead are kept of each bed for the month picture. */
export const STORED_MONTHS = 60

/** Chances are kept in this many parts: finer than any of them is known, in two bytes each. */
export const CHANCE_PARTS = 65_535

/** Length of a bed's stored chances, node by node; those of an earlier release are of another length and wait for the bed's next forecast. */
export const STORED_LENGTH = PARAMETER_NODES * STORED_MONTHS

/** The first STORED_MONTHS months at each node, row by row, in CHANCE_PARTS. Null where one is no chance, or a node's add up to more than 1: nothing of it is kept. */
export function packMonths(nodeMonthChances: Float64Array, months: number): Uint16Array | null {
  const nodes = nodeMonthChances.length / months
  const out = new Uint16Array(nodes * STORED_MONTHS)
  for (let node = 0; node < nodes; node++) {
    let sum = 0
    for (let month = 0; month < STORED_MONTHS; month++) {
      const chance = nodeMonthChances[node * months + month] ?? 0
      sum += chance
      if (!(chance >= 0 && sum <= 1 + 1e-9)) return null
      out[node * STORED_MONTHS + month] = Math.round(Math.min(1, chance) * CHANCE_PARTS)
    }
  }
  return out
}

/** Chance of failing in each month, averaged over the nodes. */
export function monthMeans(chances: Uint16Array): Float64Array {
  const means = new Float64Array(STORED_MONTHS)
  for (let at = 0; at < chances.length; at++)
    means[at % STORED_MONTHS] = (means[at % STORED_MONTHS] ?? 0) + (chances[at] ?? 0) / CHANCE_PARTS / PARAMETER_NODES
  return means
}
