/** A seeded source of chance: the same seed gives the same demo. Mulberry32, by T. Ettinger (public domain). */
export type Random = {
  next: () => number
  int: (from: number, to: number) => number
  pick: <T>(list: readonly T[]) => T
  chance: (share: number) => boolean
  /** Weibull by inversion. */
  weibull: (shape: number, median: number) => number
  between: (from: number, to: number) => number
}

export function seeded(seed: number): Random {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return {
    next,
    int: (from, to) => from + Math.floor(next() * (to - from + 1)),
    pick: (list) => list[Math.floor(next() * list.length)] as (typeof list)[number],
    chance: (share) => next() < share,
    weibull: (shape, median) => median * (-Math.log(1 - next()) / Math.LN2) ** (1 / shape),
    between: (from, to) => from + next() * (to - from),
  }
}
