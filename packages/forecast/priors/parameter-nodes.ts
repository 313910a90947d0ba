import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import type { LifeFamilyName } from '../lifetime/life-family.ts'
import { cholesky } from '../numeric/cholesky.ts'
import { normalPoints } from '../numeric/normal-points.ts'
import {
  type ForecastParameters,
  type LifeModel,
  PARAMETER_KEYS,
  type ParameterValues,
  type SupplyEffect,
  type SupplyEffects,
} from './forecast-parameters.ts'

/** Sets of parameters that stand for the doubt about them, each with weight 1/PARAMETER_NODES. The same for all beds, so that beds share the doubt. */
export const PARAMETER_NODES = 24

/** One set of parameters with the distribution of life it belongs to. */
export interface LifeNode extends ParameterValues {
  readonly family: LifeFamilyName
  /** Effect on ln life that this set gives the beds of a supply; 0 where supplies are not told apart. */
  readonly supplyLog: (supply: string | null | undefined) => number
}

const SIZE = PARAMETER_KEYS.length
const known = new WeakMap<ForecastParameters, readonly LifeNode[]>()

/**
 * PARAMETER_NODES parameter sets: each model has its share of them, with exactly its mean and, where it has two nodes a parameter, covariance. Deterministic: no seed, no noise
 * between runs.
 */
export function parameterNodes(parameters: ForecastParameters): readonly LifeNode[] {
  let nodes = known.get(parameters)
  if (nodes === undefined) {
    nodes = buildNodes(parameters)
    known.set(parameters, nodes)
  }
  return nodes
}

/** The central parameter set of the main model (the median of each). */
export function centralValues(parameters: ForecastParameters): LifeNode {
  const effects = new Map((parameters.supplies?.known ?? []).map((effect) => [effect.supply, effect.mean]))
  return {
    ...valuesOf(parameters.logMean),
    family: parameters.family ?? 'weibull',
    supplyLog: (supply) => effects.get(supply ?? '') ?? 0,
  }
}

/** All models with their shares, the main one first. */
export function modelsOf(parameters: ForecastParameters): LifeModel[] {
  const { family = 'weibull', logMean, logCovariance, alternative, alternatives = [] } = parameters
  const others = alternative === undefined ? alternatives : [...alternatives, alternative]
  return [{ share: 1 - others.reduce((sum, model) => sum + model.share, 0), family, logMean, logCovariance }, ...others]
}

function buildNodes(parameters: ForecastParameters): readonly LifeNode[] {
  const models = modelsOf(parameters)
  // Whole pairs of mirrored nodes, so that each model keeps its mean; what rounding leaves over goes to the main model.
  const pairs = models.map((model, i) => (i === 0 ? 0 : Math.round((model.share * PARAMETER_NODES) / 2)))
  pairs[0] = Math.max(0, PARAMETER_NODES / 2 - pairs.reduce((sum, pair) => sum + pair, 0))
  const nodes: LifeNode[] = []
  models.forEach((model, i) => {
    const first = nodes.length
    for (const logs of spread(model, 2 * (pairs[i] ?? 0), parameters.version)) {
      const place = nodes.length
      nodes.push({
        ...valuesOf(logs),
        family: model.family ?? 'weibull',
        supplyLog: supplyLogs(
          model.supplies ?? parameters.supplies,
          parameters,
          i === 0 || model.supplies !== undefined ? { logs, logMean: model.logMean } : null,
          place - first,
          place,
        ),
      })
    }
  })
  return nodes.slice(0, PARAMETER_NODES)
}

/** `count` sets of log parameters of one model; with fewer pairs than parameters only the mean is kept exactly. */
function spread(model: LifeModel, count: number, version: string): Float64Array[] {
  const lower = cholesky(model.logCovariance, SIZE)
  if (lower === null || model.logMean.length !== SIZE || !model.logMean.every(Number.isFinite)) {
    throw new RangeError(`Forecast parameters ${version} are damaged: a mean or covariance is no number.`)
  }
  return (count === 0 ? [] : normalPoints(count, SIZE)).map((z) =>
    Float64Array.from(model.logMean, (mean, i) => {
      let sum = mean
      for (let k = 0; k <= i; k++) sum += (lower[i * SIZE + k] ?? 0) * (z[k] ?? 0)
      return sum
    }),
  )
}

/**
 * The effects of supplies at one node: each supply has its own sequence of normal numbers, mirrored in pairs, so that its beds share the doubt about it and other
 * supplies do not. `own` null: a model other than that with which the effects were found, which takes their doubt whole.
 */
function supplyLogs(
  supplies: SupplyEffects | undefined,
  { logCovariance }: ForecastParameters,
  own: { readonly logs: Float64Array; readonly logMean: readonly number[] } | null,
  turn: number,
  place: number,
): LifeNode['supplyLog'] {
  if (supplies === undefined) return () => 0
  const effects = new Map(supplies.known.map((effect) => [effect.supply, effect]))
  return (supply) => {
    if (supply === null || supply === undefined) return 0
    const z = supplyNormal(supply, place >> 1) * (turn % 2 === 0 ? 1 : -1)
    const effect = effects.get(supply)
    if (effect === undefined) return supplies.spread * z
    if (own === null) return effect.mean + wholeSd(effect, logCovariance) * z
    const { logs, logMean } = own
    return effect.slope.reduce((sum, slope, i) => sum + slope * ((logs[i] ?? 0) - (logMean[i] ?? 0)), effect.mean + effect.sd * z)
  }
}

/** Doubt about an effect with that about the parameters in it. */
export function wholeSd(effect: SupplyEffect, logCovariance: readonly number[]): number {
  let square = effect.sd ** 2
  for (let i = 0; i < SIZE; i++)
    for (let j = 0; j < SIZE; j++) square += (effect.slope[i] ?? 0) * (effect.slope[j] ?? 0) * (logCovariance[i * SIZE + j] ?? 0)
  return Math.sqrt(square)
}

/** The n-th of a supply's numbers: a golden-ratio sequence turned by a hash of its key (FNV-1a), through the normal quantile. */
function supplyNormal(supply: string, n: number): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < supply.length; i++) hash = Math.imul(hash ^ supply.charCodeAt(i), 0x01000193)
  const turned = ((hash >>> 0) / 2 ** 32 + (n + 1) * 0.6180339887498949) % 1
  return normalQuantile(Math.min(Math.max(turned, 0.004), 0.996), 0, 1)
}

/** Natural values of log parameters in the order of PARAMETER_KEYS. */
export function valuesOf(logs: ArrayLike<number>): ParameterValues {
  const values = {} as Record<string, number>
  PARAMETER_KEYS.forEach((key, i) => {
    values[key] = Math.exp(logs[i] ?? 0)
  })
  return values as ParameterValues
}
