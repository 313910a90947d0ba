import type { CountDistribution } from './count-distribution.ts'
import { distributionFromPowerSums, POWERS, usablePowerSum } from './power-sums.ts'

const NO_BEDS: CountDistribution = { first: 0, chance: Float64Array.of(1) }

/** Counts failures among independent beds with chances in [0, 1]. `add` throws RangeError for a chance that is none: that is a defect upstream. */
export interface BedCounter {
  add(chance: number): void
  distribution(): CountDistribution
}

/** Many counts side by side, each at its place. */
export interface CountTable {
  add(place: number, chance: number): void
  /** Adds the beds of another table of the same size, place by place: a fleet from its groups without counting a bed twice. */
  merge(other: CountTable): void
  distribution(place: number): CountDistribution
  /** For merge: sums of powers, how many beds are in them, and the count of the others. */
  readonly parts: { readonly sums: Float64Array; readonly small: Uint32Array; readonly large: readonly CountDistribution[] }
}

/**
 * Takes beds one at a time in constant memory. Small chances enter as sums of their powers, from which the generating function follows to 1e-13 at every
 * point of the unit circle and the distribution by one inverse Fourier transform (power-sums.ts); the few large ones join by the direct recursion.
 * O(powers) a bed, O(w log w) at the end for a distribution w counts wide. One array holds the sums of all places: a bed that adds to each walks it once.
 */
export function countTable(size: number): CountTable {
  const sums = new Float64Array(size * POWERS)
  const small = new Uint32Array(size)
  const large = new Array<CountDistribution>(size).fill(NO_BEDS)
  return {
    parts: { sums, small, large },
    add(place, chance) {
      if (!(chance >= 0 && chance <= 1)) throw new RangeError(`A chance of ${chance} cannot be counted; it must be between 0 and 1.`)
      if (!usablePowerSum(chance)) {
        large[place] = withBed(large[place] as CountDistribution, chance)
        return
      }
      small[place] = (small[place] as number) + 1
      let power = chance
      // Powers beyond the point where they cease to matter are not summed: see power-sums.ts.
      for (let at = place * POWERS; power > 1e-26; at++) {
        sums[at] = (sums[at] as number) + power
        power *= chance
      }
    },
    merge({ parts }) {
      for (let i = 0; i < sums.length; i++) sums[i] = (sums[i] as number) + (parts.sums[i] as number)
      for (let i = 0; i < size; i++) {
        small[i] = (small[i] as number) + (parts.small[i] as number)
        large[i] = convolve(large[i] as CountDistribution, parts.large[i] as CountDistribution)
      }
    },
    distribution(place) {
      const own = sums.subarray(place * POWERS, (place + 1) * POWERS)
      const many = large[place] as CountDistribution
      return small[place] === 0 ? many : convolve(distributionFromPowerSums(own, small[place] as number), many)
    },
  }
}

/** One count. */
export function countBeds(): BedCounter {
  const table = countTable(1)
  return { add: (chance) => table.add(0, chance), distribution: () => table.distribution(0) }
}

/** Adding a bed with chance p turns f(n) into f(n)(1 − p) + f(n − 1)p. */
function withBed({ first, chance }: CountDistribution, p: number): CountDistribution {
  const out = new Float64Array(chance.length + 1)
  for (let n = 0; n < out.length; n++) out[n] = (chance[n] ?? 0) * (1 - p) + (chance[n - 1] ?? 0) * p
  return trim(first, out)
}

/** Distribution of the sum of two independent counts. */
function convolve(a: CountDistribution, b: CountDistribution): CountDistribution {
  if (b.chance.length === 1) return { first: a.first + b.first, chance: a.chance }
  const out = new Float64Array(a.chance.length + b.chance.length - 1)
  for (let j = 0; j < b.chance.length; j++) {
    const weight = b.chance[j] as number
    for (let i = 0; i < a.chance.length; i++) out[i + j] = (out[i + j] as number) + weight * (a.chance[i] as number)
  }
  return trim(a.first + b.first, out)
}

/** Cuts tails of less than 1e-17 in all. */
function trim(first: number, chance: Float64Array): CountDistribution {
  let low = 0
  let high = chance.length
  for (let lost = 0; low < high - 1; low++) {
    lost += chance[low] as number
    if (lost > 1e-17) break
  }
  for (let lost = 0; high > low + 1; high--) {
    lost += chance[high - 1] as number
    if (lost > 1e-17) break
  }
  return low === 0 && high === chance.length ? { first, chance } : { first: first + low, chance: chance.slice(low, high) }
}

/** Average of several distributions with equal weights. */
export function mixture(parts: readonly CountDistribution[]): CountDistribution {
  const first = Math.min(...parts.map((part) => part.first))
  const end = Math.max(...parts.map((part) => part.first + part.chance.length))
  const chance = new Float64Array(end - first)
  for (const part of parts) {
    for (let i = 0; i < part.chance.length; i++) {
      const place = part.first - first + i
      chance[place] = (chance[place] as number) + (part.chance[i] as number) / parts.length
    }
  }
  return { first, chance }
}

/** Least count whose cumulative chance reaches p. */
export function countQuantile(distribution: CountDistribution, p: number): number {
  let sum = 0
  for (let i = 0; i < distribution.chance.length; i++) {
    sum += distribution.chance[i] as number
    // A hair of rounding must not push an exactly reached quantile one count up.
    if (sum >= p - 1e-12) return distribution.first + i
  }
  return distribution.first + distribution.chance.length - 1
}

/** Chance that the count is at most n. */
export function countAtMost(distribution: CountDistribution, n: number): number {
  let sum = 0
  const last = Math.min(n - distribution.first, distribution.chance.length - 1)
  for (let i = 0; i <= last; i++) sum += distribution.chance[i] as number
  return Math.min(1, sum)
}
