import { inverseCurvature } from '../numeric/maximise.ts'
import { type ForecastParameters, PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { modelsOf } from '../priors/parameter-nodes.ts'

const SIZE = PARAMETER_KEYS.length

/** Share of the prior's variance that is doubt about the trade as a whole; the rest is how firms differ. A guess; common practice, no source. */
const TRADE_SHARE = 0.5

export interface Pooling {
  /** Whether this firm chose to take part. Off unless it did. */
  readonly optedIn: boolean
  /** Fits of other firms that chose to take part, each made from the same unpooled prior; nothing else of theirs is needed or seen. */
  readonly others: readonly ForecastParameters[]
}

/**
 * The prior for a firm's fit, sharpened by what other firms' fits say of the trade as a whole: a normal hierarchy, θ_firm = θ_trade + difference, where each firm's
 * posterior less its prior is what its own records say. Without consent, or without others, the prior itself, the same object: then no other firm can change
 * a fit. With it, doubt never falls below how firms differ.
 */
export function pooledPrior(prior: ForecastParameters, { optedIn, others }: Pooling): ForecastParameters {
  if (!optedIn || others.length === 0) return prior
  const before = inverse(prior.logCovariance)
  if (before === null) return prior
  const within = prior.logCovariance.map((value) => (1 - TRADE_SHARE) * value)
  const trade = prior.logCovariance.map((value) => TRADE_SHARE * value)
  // Information about θ_trade: the prior's, then each firm's.
  const tradePrecision = inverse(trade)
  if (tradePrecision === null) return prior
  const precision = Float64Array.from(tradePrecision)
  const pull = times(tradePrecision, prior.logMean)
  let used = 0
  for (const other of others) {
    const seen = ownEvidence(other, before, prior.logMean)
    const passed = seen === null ? null : throughDifference(seen, within)
    if (passed === null) continue
    used++
    for (let i = 0; i < SIZE; i++) pull[i] = (pull[i] as number) + (passed.pull[i] as number)
    for (let i = 0; i < SIZE * SIZE; i++) precision[i] = (precision[i] as number) + (passed.precision[i] as number)
  }
  const covariance = inverse(precision)
  if (used === 0 || covariance === null) return prior
  return {
    ...prior,
    version: `${prior.version}+pooled-${used}`,
    logMean: Array.from(times(covariance, pull)),
    logCovariance: Array.from(covariance, (value, i) => value + (within[i] as number)),
    sources: [...prior.sources, `Narrowed with ${used} other ${used === 1 ? 'firm' : 'firms'} that share what they learned.`],
  }
}

interface Evidence {
  readonly precision: Float64Array
  /** Precision × mean: defined also in directions of which nothing was learned. */
  readonly pull: Float64Array
}

/**
 * What a firm's records say by themselves: its posterior less the prior. By its model with effects, since one that holds them at nil says nothing of their size.
 * Null for damaged parameters, or where only age was found to act.
 */
function ownEvidence(fit: ForecastParameters, before: Float64Array, priorMean: readonly number[]): Evidence | null {
  const exponent = PARAMETER_KEYS.indexOf('chlorineExponent')
  const model = modelsOf(fit).find(({ logCovariance }) => (logCovariance[exponent * SIZE + exponent] ?? 0) > 1e-5)
  const after = model === undefined || model.logMean.length !== SIZE ? null : inverse(model.logCovariance)
  if (model === undefined || after === null) return null
  const own = times(after, model.logMean)
  const base = times(before, priorMean)
  return { precision: after.map((value, i) => value - (before[i] as number)), pull: own.map((value, i) => value - (base[i] as number)) }
}

/** Evidence about one firm's θ as evidence about θ_trade, which differs by B: precision B⁻¹ − B⁻¹(B⁻¹ + Λ)⁻¹B⁻¹, pull B⁻¹(B⁻¹ + Λ)⁻¹ · pull. */
function throughDifference(evidence: Evidence, between: readonly number[]): Evidence | null {
  const inner = inverse(between)
  const sum = inner === null ? null : inverse(inner.map((value, i) => value + (evidence.precision[i] as number)))
  if (inner === null || sum === null) return null
  const left = product(inner, sum)
  const middle = product(left, inner)
  return { precision: inner.map((value, i) => value - (middle[i] as number)), pull: times(left, evidence.pull) }
}

function inverse(matrix: ArrayLike<number>): Float64Array | null {
  return inverseCurvature(
    Float64Array.from(matrix, (value) => -value),
    SIZE,
  )
}

function times(matrix: ArrayLike<number>, vector: ArrayLike<number>): Float64Array {
  return Float64Array.from({ length: SIZE }, (_, i) => {
    let sum = 0
    for (let j = 0; j < SIZE; j++) sum += (matrix[i * SIZE + j] as number) * (vector[j] as number)
    return sum
  })
}

function product(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  return Float64Array.from({ length: SIZE * SIZE }, (_, at) => {
    let sum = 0
    for (let k = 0; k < SIZE; k++) sum += (a[Math.floor(at / SIZE) * SIZE + k] as number) * (b[k * SIZE + (at % SIZE)] as number)
    return sum
  })
}
