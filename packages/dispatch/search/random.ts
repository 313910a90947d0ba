/** Chance from a seed: Marsaglia's xorshift, 32 bits (Marsaglia 2003, "Xorshift RNGs", shifts 13, 17, 5). */
export interface Random {
  /** A whole number from 0 to below `bound`. */
  below(bound: number): number
}

export function seededRandom(seed: number): Random {
  // Neighbouring seeds must not start alike, and the state must not be 0.
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) | 0 || 1
  const draw = (): number => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return state >>> 0
  }
  for (let i = 0; i < 8; i++) draw()
  return { below: (bound) => Math.floor((draw() / 4294967296) * bound) }
}

/** Shuffles in place (Fisher and Yates). */
export function shuffle(items: Int32Array, random: Random): void {
  for (let i = items.length - 1; i > 0; i--) {
    const j = random.below(i + 1)
    const held = items[i] as number
    items[i] = items[j] as number
    items[j] = held
  }
}
