/**
 * Weibull lifetimes: S(t) = exp(−(t/η)^β), shape β and scale η positive, t ≥ 0 in the scale's unit. Everything goes through the cumulative hazard
 * and expm1/log1p, so that small chances keep their digits and late ages do not become 0/0.
 */
export interface Weibull {
  readonly shape: number
  readonly scale: number
}

const LN2 = Math.LN2

/** Weibull with the given median and shape. */
export function weibullFromMedian(median: number, shape: number): Weibull {
  return { shape, scale: median / LN2 ** (1 / shape) }
}

/** H(t) = −ln S(t) = (t/η)^β; zero before birth. */
function cumulativeHazard({ shape, scale }: Weibull, t: number): number {
  return t <= 0 ? 0 : (t / scale) ** shape
}

/** Chance of failing within `window` after having reached `age`. */
export function conditionalFailureChance(weibull: Weibull, age: number, window: number): number {
  return -Math.expm1(cumulativeHazard(weibull, age) - cumulativeHazard(weibull, age + window))
}
