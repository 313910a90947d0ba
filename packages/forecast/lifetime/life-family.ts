import logNormalCdf from '@stdlib/stats-base-dists-normal-logcdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

export type LifeFamilyName = 'weibull' | 'lognormal' | 'loglogistic'

/**
 * A location-scale family of ln T: z = (ln t − location)/scale. out[0] is a logarithm, out[1] and out[2] its first and second derivative by z; all stay
 * finite and keep their digits in the tails.
 */
export interface LifeFamily {
  readonly name: LifeFamilyName
  logSurvival(z: number, out: Float64Array): void
  /** ln of the density of z. */
  logDensity(z: number, out: Float64Array): void
  /** ln of the chance of having failed. */
  logFailure(z: number, out: Float64Array): void
  /** z by which a share p has failed. */
  quantile(p: number): number
}

/** ln(1 − e^(−x)) for x > 0 (Mächler 2012, "Accurately computing log(1 − exp(−|a|))"). */
export function log1mExp(x: number): number {
  return x > Math.LN2 ? Math.log1p(-Math.exp(-x)) : Math.log(-Math.expm1(-x))
}

const weibull: LifeFamily = {
  name: 'weibull',
  logSurvival(z, out) {
    const h = Math.exp(z)
    out[0] = -h
    out[1] = -h
    out[2] = -h
  },
  logDensity(z, out) {
    const h = Math.exp(z)
    out[0] = z - h
    out[1] = 1 - h
    out[2] = -h
  },
  logFailure(z, out) {
    const h = Math.exp(z)
    out[0] = log1mExp(h)
    // h/(e^h − 1), which is 1 for small h and nil for large.
    const ratio = h > 700 ? 0 : h === 0 ? 1 : h / Math.expm1(h)
    out[1] = ratio
    out[2] = ratio * (1 - h - ratio)
  },
  quantile: (p) => Math.log(-Math.log1p(-p)),
}

function softplus(z: number): number {
  return z > 0 ? z + Math.log1p(Math.exp(-z)) : Math.log1p(Math.exp(z))
}

function logistic(z: number): number {
  return z >= 0 ? 1 / (1 + Math.exp(-z)) : Math.exp(z) / (1 + Math.exp(z))
}

const loglogistic: LifeFamily = {
  name: 'loglogistic',
  logSurvival(z, out) {
    const p = logistic(z)
    out[0] = -softplus(z)
    out[1] = -p
    out[2] = -p * logistic(-z)
  },
  logDensity(z, out) {
    const p = logistic(z)
    out[0] = z - 2 * softplus(z)
    out[1] = 1 - 2 * p
    out[2] = -2 * p * logistic(-z)
  },
  logFailure(z, out) {
    const q = logistic(-z)
    out[0] = -softplus(-z)
    out[1] = q
    out[2] = -q * logistic(z)
  },
  quantile: (p) => Math.log(p) - Math.log1p(-p),
}

const HALF_LOG_2PI = 0.9189385332046728

const lognormal: LifeFamily = {
  name: 'lognormal',
  logSurvival(z, out) {
    const log = logNormalCdf(-z, 0, 1)
    // Hazard of the standard normal.
    const h = Math.exp(-0.5 * z * z - HALF_LOG_2PI - log)
    out[0] = log
    out[1] = -h
    out[2] = -h * (h - z)
  },
  logDensity(z, out) {
    out[0] = -0.5 * z * z - HALF_LOG_2PI
    out[1] = -z
    out[2] = -1
  },
  logFailure(z, out) {
    lognormal.logSurvival(-z, out)
    out[1] = -(out[1] as number)
  },
  quantile: (p) => normalQuantile(p, 0, 1),
}

export const LIFE_FAMILIES: Readonly<Record<LifeFamilyName, LifeFamily>> = { weibull, lognormal, loglogistic }
