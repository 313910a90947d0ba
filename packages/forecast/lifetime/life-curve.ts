import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { LIFE_FAMILIES, type LifeFamily, type LifeFamilyName } from './life-family.ts'
import { spreadOf } from './spread.ts'

/** A distribution of life with a given median; `shape` means the same spread of ln life in each family. */
export interface LifeCurve {
  readonly family: LifeFamilyName
  readonly median: number
  readonly shape: number
}

const out = new Float64Array(3)

/** z = (ln(t/median))·steepness + middle. */
function place({ family, median, shape }: LifeCurve, model: LifeFamily, t: number): number {
  return (Math.log(t / median) * shape) / spreadOf(family) + model.quantile(0.5)
}

/** Cumulative hazard −ln S at age t; zero before birth. */
export function lifeHazard(curve: LifeCurve, t: number): number {
  if (t <= 0) return 0
  if (curve.family === 'weibull') return Math.LN2 * (t / curve.median) ** curve.shape
  const model = LIFE_FAMILIES[curve.family]
  model.logSurvival(place(curve, model, t), out)
  return -(out[0] as number)
}

/** Slope of the cumulative hazard by age. */
export function lifeHazardRate(curve: LifeCurve, t: number): number {
  if (t <= 0) return 0
  const steepness = curve.shape / spreadOf(curve.family)
  const model = LIFE_FAMILIES[curve.family]
  model.logSurvival(place(curve, model, t), out)
  return (-(out[1] as number) * steepness) / t
}

/** Age at which the cumulative hazard reaches h ≥ 0. */
export function ageAtLifeHazard(curve: LifeCurve, h: number): number {
  if (h <= 0) return 0
  const { family, median, shape } = curve
  if (family === 'weibull') return median * (h / Math.LN2) ** (1 / shape)
  const z = family === 'loglogistic' ? Math.log(Math.expm1(h)) : normalAtHazard(h)
  return median * Math.exp((Math.min(z, 600) * spreadOf(family)) / shape)
}

/** Standard normal z with −ln S(z) = h. Below 1e-20 the library's quantile has no digits left; there the tail's leading term serves. */
function normalAtHazard(h: number): number {
  if (h > 45) return Math.sqrt(2 * h - Math.log(2 * Math.PI * 2 * h))
  return h > Math.LN2 ? -normalQuantile(Math.exp(-h), 0, 1) : normalQuantile(-Math.expm1(-h), 0, 1)
}

/** Chance of lasting longer than t. */
export function lifeSurvival(curve: LifeCurve, t: number): number {
  return Math.exp(-lifeHazard(curve, t))
}
