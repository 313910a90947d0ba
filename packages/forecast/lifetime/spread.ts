import type { LifeFamilyName } from './life-family.ts'

/**
 * σ of ln life per 1/shape: with it one `shape` gives the same standard deviation of ln life in every family, π/(√6·shape), so that one prior serves all three
 * (Weibull: Gumbel's π/√6; normal 1; logistic π/√3).
 */
const SPREADS: Readonly<Record<LifeFamilyName, number>> = { weibull: 1, lognormal: Math.PI / Math.sqrt(6), loglogistic: Math.SQRT1_2 }

export function spreadOf(family: LifeFamilyName): number {
  return SPREADS[family]
}
