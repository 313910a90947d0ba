import { cholesky } from '../numeric/cholesky.ts'
import { inverseCurvature } from '../numeric/maximise.ts'
import { normalPoints } from '../numeric/normal-points.ts'
import type { LogNormal, Posterior } from './life-posterior.ts'
import { likelihoodOf } from './plain-likelihood.ts'
import type { WearTable } from './wear-table.ts'

/** Beyond so many failures the posterior is as good as normal and its mode its mean. */
const FAILURES_ENOUGH = 400

const POINTS = 512

/** The points are spread a little wider than Laplace's normal, so that its thin tails do not cut the posterior's. */
const WIDENING = 1.15

/** Fewer points than this share carrying the weight means that the correction is noise. */
const LEAST_EFFECTIVE = 0.1

/**
 * Mean, covariance and evidence of the posterior itself in place of its mode and curvature: with few failures it leans to one side, and intervals around the
 * mode held the truth 76 times in 100 where 80 were promised. Importance weights at fixed points (Geweke 1989). Laplace's stays where weights degenerate or
 * failures are many.
 */
export function correctedPosterior(table: WearTable, found: Posterior, prior: LogNormal): Posterior {
  const size = found.logMean.length
  const lower = cholesky(found.logCovariance, size)
  const precision = inverseCurvature(
    Float64Array.from(prior.logCovariance, (value) => -value),
    size,
  )
  if (table.failures > FAILURES_ENOUGH || lower === null || precision === null) return found
  const logLikelihood = likelihoodOf(table, found.family)
  // Asked first at the middle, from where each supply's effect is then looked for.
  logLikelihood(found.logMean)
  const points = cached(size)
  const thetas: Float64Array[] = []
  const logs: number[] = []
  for (const z of points) {
    const theta = Float64Array.from(found.logMean, (mean, i) => {
      let sum = mean
      for (let k = 0; k <= i; k++) sum += WIDENING * (lower[i * size + k] as number) * (z[k] as number)
      return sum
    })
    let square = 0
    for (let k = 0; k < size; k++) square += (z[k] as number) ** 2
    const log = logLikelihood(theta) - 0.5 * quadratic(theta, prior.logMean, precision) + 0.5 * square
    thetas.push(theta)
    logs.push(Number.isFinite(log) ? log : Number.NEGATIVE_INFINITY)
  }
  const top = logs.reduce((most, log) => Math.max(most, log), Number.NEGATIVE_INFINITY)
  const weights = logs.map((log) => Math.exp(log - top))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const squares = weights.reduce((sum, weight) => sum + weight * weight, 0)
  if (!((total * total) / squares > LEAST_EFFECTIVE * POINTS)) return found
  const logMean = new Array<number>(size).fill(0)
  thetas.forEach((theta, n) => {
    for (let i = 0; i < size; i++) logMean[i] = (logMean[i] as number) + ((weights[n] as number) * (theta[i] as number)) / total
  })
  const logCovariance = new Array<number>(size * size).fill(0)
  thetas.forEach((theta, n) => {
    const share = (weights[n] as number) / total
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++)
        logCovariance[i * size + j] =
          (logCovariance[i * size + j] as number) +
          share * ((theta[i] as number) - (logMean[i] as number)) * ((theta[j] as number) - (logMean[j] as number))
  })
  let logVolume = size * Math.log(WIDENING) + 0.5 * logDeterminantOf(precision, size)
  for (let i = 0; i < size; i++) logVolume += Math.log(lower[i * size + i] as number)
  return { ...found, logMean, logCovariance, logEvidence: top + Math.log(total / POINTS) + logVolume }
}

const kept = new Map<number, Float64Array[]>()

function cached(size: number): Float64Array[] {
  const points = kept.get(size) ?? normalPoints(POINTS, size)
  kept.set(size, points)
  return points
}

function quadratic(theta: Float64Array, mean: readonly number[], precision: Float64Array): number {
  const size = theta.length
  let sum = 0
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      sum +=
        ((theta[i] as number) - (mean[i] as number)) * (precision[i * size + j] as number) * ((theta[j] as number) - (mean[j] as number))
  return sum
}

function logDeterminantOf(matrix: Float64Array, size: number): number {
  const lower = cholesky(matrix, size)
  let sum = 0
  for (let i = 0; i < size; i++) sum += 2 * Math.log(lower?.[i * size + i] ?? 0)
  return sum
}
