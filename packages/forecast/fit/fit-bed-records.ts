import { ok, type Result, refuse } from '@almanac/units/result'
import type { IsoDay } from '../calendar/day-number.ts'
import { cholesky } from '../numeric/cholesky.ts'
import { inverseCurvature, maximise, type Surface } from '../numeric/maximise.ts'
import { type ForecastParameters, PARAMETER_KEYS, type ParameterKey } from '../priors/forecast-parameters.ts'
import { valuesOf } from '../priors/parameter-nodes.ts'
import { bedLogLikelihood } from './bed-likelihood.ts'
import type { BedRecord } from './bed-record.ts'
import { type ReadRecord, readRecord } from './read-record.ts'

export interface RecordsFit {
  /** To be used in place of the prior by every later forecast. */
  readonly parameters: ForecastParameters
  readonly used: number
  readonly failures: number
  /** Why records were kept out, and how many. */
  readonly leftOut: readonly { readonly reason: string; readonly count: number }[]
  readonly logLikelihood: number
  /** Share of the prior's variance of each parameter that the records took away: 0 nothing learned, 1 all from the records. */
  readonly learned: Readonly<Record<string, number>>
  /** Belief, after the records, that nothing but age makes a difference to this firm's beds; that model is averaged in with this share. */
  readonly noEffectShare: number
}

const SIZE = PARAMETER_KEYS.length

/**
 * The firm's own parameters: penalised maximum likelihood of its bed records under cumulative exposure with late entry, intervals and uncertain beginnings;
 * the penalty is the published prior, so few failures stay near it and many follow the data. Laplace's posterior covariance. Only what was known on
 * `asOfDay` is used. Deterministic. Refuses, with the prior to stay in use, when nothing failed or the fit does not settle.
 */
export function fitBedRecords(
  records: readonly BedRecord[],
  prior: ForecastParameters,
  asOfDay: IsoDay,
  version: string,
): Result<RecordsFit> {
  const read: ReadRecord[] = []
  const leftOut = new Map<string, number>()
  for (const record of records) {
    const one = readRecord(record, asOfDay, prior)
    if (one.ok) read.push(one)
    else leftOut.set(one.reason, (leftOut.get(one.reason) ?? 0) + 1)
  }
  const failures = read.filter((record) => record.upper !== Number.POSITIVE_INFINITY).length
  if (failures === 0)
    return refuse('No bed has failed on record yet, so there is nothing to learn from. The trade’s first guesses stay in use.')
  const full = laplace(read, prior.logMean, prior.logCovariance)
  if (full === null) return refuse('The fit to the firm’s records did not settle. The former parameters stay in use.')
  const idle = ageAlone(prior)
  const none = laplace(read, idle.logMean, idle.logCovariance)
  const odds =
    none === null ? 0 : (NO_EFFECT_BELIEF / (1 - NO_EFFECT_BELIEF)) * Math.exp(Math.min(700, none.logEvidence - full.logEvidence))
  const noEffectShare = odds / (1 + odds)
  const [main, other] = none !== null && noEffectShare > 0.5 ? [none, full] : [full, none]
  const otherShare = Math.min(noEffectShare, 1 - noEffectShare)
  const parameters: ForecastParameters = {
    version,
    logMean: main.logMean,
    logCovariance: main.logCovariance,
    ...(other !== null && otherShare > 0.01
      ? { alternative: { share: otherShare, logMean: other.logMean, logCovariance: other.logCovariance } }
      : {}),
    assumedWater: prior.assumedWater,
    sources: [
      `Fitted to ${failures} failures among ${read.length} beds known on ${asOfDay}, starting from ${prior.version}.`,
      ...prior.sources,
    ],
  }
  const learned = Object.fromEntries(
    PARAMETER_KEYS.map((key, i) => [key, 1 - (full.logCovariance[i * SIZE + i] as number) / (prior.logCovariance[i * SIZE + i] as number)]),
  )
  return ok({
    parameters,
    used: read.length,
    failures,
    leftOut: [...leftOut].map(([reason, count]) => ({ reason, count })),
    logLikelihood: main.logLikelihood,
    learned,
    noEffectShare,
  })
}

/** Belief, before any record, that nothing but age makes a difference worth the name. A guess that lets the records say so. */
const NO_EFFECT_BELIEF = 0.2

const EFFECT_KEYS: readonly ParameterKey[] = [
  'chlorineExponent',
  'ironExponent',
  'crosslinkEffect',
  'throughputExponent',
  'temperatureEffect',
]

/** The prior with all effects held at nil: age alone. */
function ageAlone(prior: ForecastParameters): { logMean: readonly number[]; logCovariance: readonly number[] } {
  const held = PARAMETER_KEYS.map((key) => EFFECT_KEYS.includes(key))
  return {
    logMean: prior.logMean.map((mean, i) => (held[i] ? Math.log(1e-4) : mean)),
    logCovariance: prior.logCovariance.map((value, index) => {
      const i = Math.floor(index / SIZE)
      const j = index % SIZE
      if (held[i] || held[j]) return i === j ? 1e-6 : 0
      return value
    }),
  }
}

interface Posterior {
  readonly logMean: readonly number[]
  readonly logCovariance: readonly number[]
  readonly logLikelihood: number
  /** ln of the model's marginal likelihood, by Laplace. */
  readonly logEvidence: number
}

/** Mode and curvature of one model's posterior; null when it does not settle. */
function laplace(read: readonly ReadRecord[], mean: readonly number[], covariance: readonly number[]): Posterior | null {
  const precision = inverseCurvature(
    Float64Array.from(covariance, (value) => -value),
    SIZE,
  )
  if (precision === null) return null
  const found = maximise((theta) => posterior(read, theta, mean, precision), mean)
  const after = inverseCurvature(found.surface.hessian, SIZE)
  if (!found.converged || after === null) return null
  return {
    logMean: Array.from(found.theta),
    logCovariance: Array.from(after),
    logLikelihood: likelihood(read, found.theta, new Float64Array(SIZE)),
    logEvidence: found.surface.value + 0.5 * (logDeterminant(after) - logDeterminant(covariance)),
  }
}

function logDeterminant(matrix: ArrayLike<number>): number {
  const lower = cholesky(matrix, SIZE)
  let sum = 0
  for (let i = 0; i < SIZE; i++) sum += 2 * Math.log(lower?.[i * SIZE + i] ?? 0)
  return sum
}

function likelihood(read: readonly ReadRecord[], theta: Float64Array, gradient: Float64Array): number {
  const values = valuesOf(theta)
  let sum = 0
  for (const record of read) sum += bedLogLikelihood(record, theta, values, gradient)
  return sum
}

/** Step of the central difference that turns the analytic gradient into a Hessian: error about 1e-10 relative. */
const STEP = 1e-4

function posterior(read: readonly ReadRecord[], theta: Float64Array, mean: readonly number[], precision: Float64Array): Surface {
  const gradient = new Float64Array(SIZE)
  let value = likelihood(read, theta, gradient)
  const hessian = new Float64Array(SIZE * SIZE)
  for (let i = 0; i < SIZE; i++) {
    const up = new Float64Array(SIZE)
    const down = new Float64Array(SIZE)
    likelihood(read, moved(theta, i, STEP), up)
    likelihood(read, moved(theta, i, -STEP), down)
    for (let j = 0; j < SIZE; j++) {
      const half = ((up[j] as number) - (down[j] as number)) / (4 * STEP)
      hessian[i * SIZE + j] = (hessian[i * SIZE + j] as number) + half
      hessian[j * SIZE + i] = (hessian[j * SIZE + i] as number) + half
    }
  }
  for (let i = 0; i < SIZE; i++) {
    let slope = 0
    for (let j = 0; j < SIZE; j++) {
      const p = precision[i * SIZE + j] as number
      slope += p * ((theta[j] as number) - (mean[j] as number))
      hessian[i * SIZE + j] = (hessian[i * SIZE + j] as number) - p
    }
    gradient[i] = (gradient[i] as number) - slope
    value -= 0.5 * slope * ((theta[i] as number) - (mean[i] as number))
  }
  return { value, gradient, hessian }
}

function moved(theta: Float64Array, i: number, by: number): Float64Array {
  const out = theta.slice()
  out[i] = (out[i] as number) + by
  return out
}
