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
export function cumulativeHazard({ shape, scale }: Weibull, t: number): number {
  return t <= 0 ? 0 : (t / scale) ** shape
}

/** Age at which the cumulative hazard reaches h ≥ 0. */
function ageAtHazard({ shape, scale }: Weibull, h: number): number {
  return scale * h ** (1 / shape)
}

/** Chance of lasting longer than t. */
export function survival(weibull: Weibull, t: number): number {
  return Math.exp(-cumulativeHazard(weibull, t))
}

/** Chance of having failed by t, with all its digits when small. */
export function failureChance(weibull: Weibull, t: number): number {
  return -Math.expm1(-cumulativeHazard(weibull, t))
}

/** Age by which a share p (0 < p < 1) has failed. */
export function quantile(weibull: Weibull, p: number): number {
  return ageAtHazard(weibull, -Math.log1p(-p))
}

/** Chance of failing within `window` after having reached `age`. */
export function conditionalFailureChance(weibull: Weibull, age: number, window: number): number {
  return -Math.expm1(cumulativeHazard(weibull, age) - cumulativeHazard(weibull, age + window))
}

/** Further life by which a share p of those that reached `age` has failed. */
export function remainingQuantile(weibull: Weibull, age: number, p: number): number {
  const more = -Math.log1p(-p)
  const h = cumulativeHazard(weibull, age)
  if (h === 0) return ageAtHazard(weibull, more)
  // age·((1 + more/h)^(1/β) − 1), written so that a short remaining life late in age keeps its digits.
  return age * Math.expm1(Math.log1p(more / h) / weibull.shape)
}

/** Mean further life of those that reached `age`: ∫ r(x) e^{−x} dx, r(x) the further life at extra hazard x. */
export function meanResidualLife(weibull: Weibull, age: number): number {
  // Mapped by x = exp(u − e^{−u}) (Takahasi and Mori 1974), where the plain trapezoid rule converges exponentially.
  const h = cumulativeHazard(weibull, age)
  const step = 1 / 32
  let sum = 0
  for (let u = -5; u <= 5; u += step) {
    const x = Math.exp(u - Math.exp(-u))
    const further = h === 0 ? ageAtHazard(weibull, x) : age * Math.expm1(Math.log1p(x / h) / weibull.shape)
    sum += further * Math.exp(-x) * x * (1 + Math.exp(-u))
  }
  return sum * step
}
