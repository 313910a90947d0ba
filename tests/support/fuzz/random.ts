import { seeded } from '@almanac/forecast/numeric/seeded'

/** Chance from a seed: the same seed gives the same requests. */
export class Chance {
  /** From 0 to below 1. */
  readonly next: () => number
  constructor(seed: number) {
    this.next = seeded(seed)
  }
  below(most: number): number {
    return Math.floor(this.next() * most)
  }
  happens(share: number): boolean {
    return this.next() < share
  }
  one<T>(of: readonly T[]): T {
    return of[this.below(of.length)] as T
  }
}
