import type { LifeFamilyName } from '../lifetime/life-family.ts'
import { cholesky } from '../numeric/cholesky.ts'
import { inverseCurvature, maximise, type Surface } from '../numeric/maximise.ts'
import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { addRecords } from './add-records.ts'
import { derivatives } from './derivatives.ts'
import { placeTable } from './place-table.ts'
import { likelihoodOf } from './plain-likelihood.ts'
import { addSupply, SPREAD, type WideDerivatives } from './supply-marginal.ts'
import type { WearTable } from './wear-table.ts'

const SIZE = PARAMETER_KEYS.length

/** A normal distribution of log parameters. */
export interface LogNormal {
  readonly logMean: readonly number[]
  readonly logCovariance: readonly number[]
}

/** Mode and curvature of one model's posterior. */
export interface Posterior extends LogNormal {
  readonly family: LifeFamilyName
  /** Without the penalty. */
  readonly logLikelihood: number
  /** ln of the model's marginal likelihood, by Laplace. */
  readonly logEvidence: number
}

/**
 * Laplace's posterior of a table's life parameters under a normal prior; with nine means the ninth parameter is ln of the supplies' spread, and their effects
 * are integrated out. `start` shortens the search and changes nothing else. Null when it does not settle.
 */
export function lifePosterior(
  table: WearTable,
  family: LifeFamilyName,
  prior: LogNormal,
  start: readonly number[] = prior.logMean,
): Posterior | null {
  const size = prior.logMean.length
  const precision = inverseCurvature(
    Float64Array.from(prior.logCovariance, (value) => -value),
    size,
  )
  if (precision === null) return null
  const found = maximise((theta) => penalised(table, family, theta, prior.logMean, precision), start, 60, 1e-11)
  const after = inverseCurvature(found.surface.hessian, size)
  if (!found.converged || after === null) return null
  return {
    family,
    logMean: Array.from(found.theta),
    logCovariance: Array.from(after),
    logLikelihood: likelihoodOf(table, family)(found.theta),
    logEvidence: found.surface.value + 0.5 * (logDeterminant(after, size) - logDeterminant(prior.logCovariance, size)),
  }
}

function logDeterminant(matrix: ArrayLike<number>, size: number): number {
  const lower = cholesky(matrix, size)
  let sum = 0
  for (let i = 0; i < size; i++) sum += 2 * Math.log(lower?.[i * size + i] ?? 0)
  return sum
}

/** ln likelihood less the penalty, with analytic derivatives. */
function penalised(
  table: WearTable,
  family: LifeFamilyName,
  theta: Float64Array,
  mean: readonly number[],
  precision: Float64Array,
): Surface {
  const size = theta.length
  const out: WideDerivatives = { value: 0, gradient: new Float64Array(size), hessian: new Float64Array(size * size) }
  const placed = placeTable(table, family, theta)
  const plain = derivatives()
  for (const { supply, from, to } of table.supplies) {
    if (size > SIZE && supply !== null) addSupply(placed, from, to, Math.exp(theta[SPREAD] as number), out)
    else addRecords(placed, from, to, 0, plain)
  }
  out.value += plain.value
  for (let i = 0; i < SIZE; i++) {
    out.gradient[i] = (out.gradient[i] as number) + (plain.gradient[i] as number)
    for (let j = 0; j <= i; j++) {
      const by = plain.hessian[i * SIZE + j] as number
      out.hessian[i * size + j] = (out.hessian[i * size + j] as number) + by
      if (i !== j) out.hessian[j * size + i] = (out.hessian[j * size + i] as number) + by
    }
  }
  for (let i = 0; i < size; i++) {
    let slope = 0
    for (let j = 0; j < size; j++) {
      const p = precision[i * size + j] as number
      slope += p * ((theta[j] as number) - (mean[j] as number))
      out.hessian[i * size + j] = (out.hessian[i * size + j] as number) - p
    }
    out.gradient[i] = (out.gradient[i] as number) - slope
    out.value -= 0.5 * slope * ((theta[i] as number) - (mean[i] as number))
  }
  return out
}
