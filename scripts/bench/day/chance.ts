/** A seeded stream of numbers in 0…1: mulberry32, public domain, by T. Ettinger. */
export function chanceFrom(seed: number): () => number {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** A factor whose logarithm is normal about 0 (Box and Muller): half of such factors are below 1. */
export const logNormal = (chance: () => number, spread: number): number =>
  Math.exp(spread * Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance()))
