import { ok, type Result, refuse } from '@almanac/units/result'
import { LIFE_FAMILIES, type LifeFamily, type LifeFamilyName } from '../lifetime/life-family.ts'
import { type LifeRecord, recordFault } from '../lifetime/life-record.ts'
import { inverseCurvature, maximise } from '../numeric/maximise.ts'
import { type Curvature, type LifeTable, lifeLikelihood, lifeTable } from './life-likelihood.ts'

/** A normal prior on (intercept, coefficients…, ln scale), for penalised fits. */
export interface NormalPrior {
  readonly mean: readonly number[]
  /** Inverse of the covariance, row-major. */
  readonly precision: readonly number[]
}

export interface LifeFit {
  readonly family: LifeFamilyName
  /** ln life = coefficients[0] + Σ coefficients[j] x_j + scale · error: the parametrisation of R's survreg; Weibull shape = 1/scale. */
  readonly coefficients: readonly number[]
  readonly scale: number
  /** Without the penalty. */
  readonly logLikelihood: number
  /** Of (coefficients…, ln scale), row-major: inverse of the observed information, with a prior Laplace's posterior covariance. */
  readonly covariance: Float64Array
  readonly events: number
  readonly iterations: number
}

/**
 * Weibull, lognormal or log-logistic life with covariates by (penalised) maximum likelihood on records with right, left and interval censoring and late
 * entry; analytic first and second derivatives. Refuses contradictory records and fits that do not converge, with a sentence. Time O(records × columns²) a step.
 */
export function fitLifetime(records: readonly LifeRecord[], family: LifeFamilyName, covariates = 0, prior?: NormalPrior): Result<LifeFit> {
  let events = 0
  for (const [i, record] of records.entries()) {
    const fault = recordFault(record)
    if (fault !== null) return refuse(`Record ${i + 1} can’t be used: ${fault}. Correct it or leave it out; nothing was learned.`)
    if (record.upper !== Number.POSITIVE_INFINITY) events += record.weight ?? 1
  }
  if (events === 0 && prior === undefined)
    return refuse('No failure is on record yet, so there’s nothing to learn from. We still use industry rules of thumb.')
  return fitTable(lifeTable(records, covariates), family, events, prior)
}

/** The same for records already laid out, of which `events` ended. */
export function fitTable(table: LifeTable, family: LifeFamilyName, events: number, prior?: NormalPrior): Result<LifeFit> {
  const size = table.columns + 1
  const model = LIFE_FAMILIES[family]
  const found = maximise((theta) => withPrior(lifeLikelihood(table, model, theta), theta, prior), startOf(table, model, prior))
  const covariance = inverseCurvature(found.surface.hessian, size)
  if (!found.converged || covariance === null) {
    return refuse(
      `The ${family} fit to ${table.count} records did not settle: they are too few or too alike. The former parameters stay in use.`,
    )
  }
  const logLikelihood = prior === undefined ? found.surface.value : lifeLikelihood(table, model, found.theta).value
  return ok({
    family,
    coefficients: Array.from(found.theta.subarray(0, table.columns)),
    scale: Math.exp(found.theta[table.columns] as number),
    logLikelihood,
    covariance,
    events,
    iterations: found.iterations,
  })
}

/** From so many records on, a fit to every tenth of them finds the start: most steps then cost a tenth, and the end is the same. */
const WORTH_THINNING = 20_000
const THINNING = 10

function startOf(table: LifeTable, model: LifeFamily, prior: NormalPrior | undefined): ArrayLike<number> {
  if (prior !== undefined) return prior.mean
  const plain = startingPoint(table)
  if (table.count < WORTH_THINNING) return plain
  const few = thinned(table)
  const found = maximise((theta) => lifeLikelihood(few, model, theta), plain, 100, 1e-8)
  return found.converged ? found.theta : plain
}

/** Every tenth record of a table. */
function thinned(table: LifeTable): LifeTable {
  const rows = Array.from({ length: Math.floor(table.count / THINNING) }, (_, i) => i * THINNING)
  const pick = (from: Float64Array) => Float64Array.from(rows, (row) => from[row] as number)
  const { columns } = table
  const design = new Float64Array(rows.length * columns)
  rows.forEach((row, i) => void design.set(table.design.subarray(row * columns, (row + 1) * columns), i * columns))
  return {
    count: rows.length,
    columns,
    design,
    logLower: pick(table.logLower),
    logUpper: pick(table.logUpper),
    logEntry: pick(table.logEntry),
    weight: pick(table.weight),
  }
}

/** Subtracts ½(θ − m)ᵀP(θ − m). */
function withPrior(surface: Curvature, theta: Float64Array, prior: NormalPrior | undefined): Curvature {
  if (prior === undefined) return surface
  const size = theta.length
  for (let i = 0; i < size; i++) {
    let slope = 0
    for (let j = 0; j < size; j++) {
      const p = prior.precision[i * size + j] as number
      slope += p * ((theta[j] as number) - (prior.mean[j] as number))
      surface.hessian[i * size + j] = (surface.hessian[i * size + j] as number) - p
    }
    surface.gradient[i] = (surface.gradient[i] as number) - slope
    surface.value -= 0.5 * slope * ((theta[i] as number) - (prior.mean[i] as number))
  }
  return surface
}

/** Exponential life with late entry: failures over time at risk; a rough interval counts with its middle. */
function startingPoint(table: LifeTable): number[] {
  let failed = 0
  let atRisk = 0
  for (let i = 0; i < table.count; i++) {
    const w = table.weight[i] as number
    const lower = Math.exp(table.logLower[i] as number)
    const upper = Math.exp(table.logUpper[i] as number)
    const end = Number.isFinite(upper) ? (lower + upper) / 2 : lower
    if (Number.isFinite(upper)) failed += w
    atRisk += w * (end - Math.exp(table.logEntry[i] as number))
  }
  return [Math.log(Math.max(atRisk, 1e-9) / Math.max(failed, 0.5)), ...new Array<number>(table.columns - 1).fill(0), Math.log(0.7)]
}
