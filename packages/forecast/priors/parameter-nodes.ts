import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { cholesky, forwardSolve } from '../numeric/cholesky.ts'
import { type ForecastParameters, PARAMETER_KEYS, type ParameterValues } from './forecast-parameters.ts'

/** Sets of parameters that stand for the doubt about them, each with weight 1/PARAMETER_NODES. The same for all beds, so that beds share the doubt. */
export const PARAMETER_NODES = 24

const SIZE = PARAMETER_KEYS.length
const known = new WeakMap<ForecastParameters, readonly ParameterValues[]>()

/**
 * PARAMETER_NODES parameter sets with exactly the mean and covariance of `parameters`: the R-sequence in eight dimensions (a low-discrepancy
 * sequence by M. Roberts, 2018) through the normal quantile, mirrored and whitened. Deterministic: no seed, no noise between runs.
 */
export function parameterNodes(parameters: ForecastParameters): readonly ParameterValues[] {
  let nodes = known.get(parameters)
  if (nodes === undefined) {
    nodes = buildNodes(parameters)
    known.set(parameters, nodes)
  }
  return nodes
}

/** The central parameter set (the median of each). */
export function centralValues(parameters: ForecastParameters): ParameterValues {
  return valuesOf(parameters.logMean)
}

function buildNodes(parameters: ForecastParameters): readonly ParameterValues[] {
  const { alternative, version } = parameters
  // Whole pairs of mirrored nodes, so that each model keeps its mean.
  const others = alternative === undefined ? 0 : 2 * Math.round((alternative.share * PARAMETER_NODES) / 2)
  const own = spread(parameters, PARAMETER_NODES - others, version)
  return alternative === undefined || others === 0 ? own : own.concat(spread(alternative, others, version))
}

/** `count` nodes of one normal distribution; with fewer pairs than parameters only the mean is kept exactly. */
function spread(
  model: { readonly logMean: readonly number[]; readonly logCovariance: readonly number[] },
  count: number,
  version: string,
): ParameterValues[] {
  const lower = cholesky(model.logCovariance, SIZE)
  if (lower === null || model.logMean.length !== SIZE || !model.logMean.every(Number.isFinite)) {
    throw new RangeError(`Forecast parameters ${version} are damaged: a mean or covariance is no number.`)
  }
  return standardNodes(count).map((z) => {
    const logs = model.logMean.map((mean, i) => {
      let sum = mean
      for (let k = 0; k <= i; k++) sum += (lower[i * SIZE + k] ?? 0) * (z[k] ?? 0)
      return sum
    })
    return valuesOf(logs)
  })
}

/** Points of mean zero and unit covariance. */
function standardNodes(count: number): Float64Array[] {
  const half = count / 2
  const phi = generalisedGoldenRatio(SIZE)
  const points: Float64Array[] = []
  for (let n = 1; n <= half; n++) {
    points.push(Float64Array.from({ length: SIZE }, (_, j) => normalQuantile((0.5 + n / phi ** (j + 1)) % 1, 0, 1)))
  }
  if (half < SIZE) return points.flatMap((z) => [z, z.map((value) => -value)])
  const covariance = new Float64Array(SIZE * SIZE)
  for (const z of points) {
    for (let i = 0; i < SIZE; i++)
      for (let j = 0; j < SIZE; j++) covariance[i * SIZE + j] = (covariance[i * SIZE + j] ?? 0) + ((z[i] ?? 0) * (z[j] ?? 0)) / half
  }
  const lower = cholesky(covariance, SIZE)
  if (lower === null) throw new RangeError('The parameter nodes could not be built.')
  return points.flatMap((z) => {
    const white = forwardSolve(lower, SIZE, z)
    return [white, white.map((value) => -value)]
  })
}

/** Root above 1 of x^(d+1) = x + 1. */
function generalisedGoldenRatio(d: number): number {
  let x = 1.5
  for (let i = 0; i < 60; i++) x = (1 + x) ** (1 / (d + 1))
  return x
}

/** Natural values of log parameters in the order of PARAMETER_KEYS. */
export function valuesOf(logs: ArrayLike<number>): ParameterValues {
  const values = {} as Record<string, number>
  PARAMETER_KEYS.forEach((key, i) => {
    values[key] = Math.exp(logs[i] ?? 0)
  })
  return values as ParameterValues
}
