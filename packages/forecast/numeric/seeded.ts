/** A number in [0, 1), from a seeded generator of the caller's. */
export type Random = () => number

/** Numbers in [0, 1) from a seed: mulberry32 by T. Ettinger, public domain. The same seed gives the same numbers everywhere. */
export function seeded(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}
