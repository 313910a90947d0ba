import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { cholesky, forwardSolve } from './cholesky.ts'

/**
 * `count` points (an even number) of exactly mean zero and, from 2 · size points on, unit covariance: the R-sequence (a low-discrepancy sequence by M. Roberts,
 * 2018) through the normal quantile, mirrored and whitened. Deterministic: no seed, no noise between runs.
 */
export function normalPoints(count: number, size: number): Float64Array[] {
  const half = count / 2
  const phi = generalisedGoldenRatio(size)
  const points: Float64Array[] = []
  for (let n = 1; n <= half; n++) {
    points.push(Float64Array.from({ length: size }, (_, j) => normalQuantile((0.5 + n / phi ** (j + 1)) % 1, 0, 1)))
  }
  if (half < size) return points.flatMap((z) => [z, z.map((value) => -value)])
  const covariance = new Float64Array(size * size)
  for (const z of points) {
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++) covariance[i * size + j] = (covariance[i * size + j] ?? 0) + ((z[i] ?? 0) * (z[j] ?? 0)) / half
  }
  const lower = cholesky(covariance, size)
  if (lower === null) throw new RangeError('The points of a normal distribution could not be built.')
  return points.flatMap((z) => {
    const white = forwardSolve(lower, size, z)
    return [white, white.map((value) => -value)]
  })
}

/** Root above 1 of x^(d+1) = x + 1. */
function generalisedGoldenRatio(d: number): number {
  let x = 1.5
  for (let i = 0; i < 60; i++) x = (1 + x) ** (1 / (d + 1))
  return x
}
