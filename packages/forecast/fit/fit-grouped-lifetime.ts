import { ok, type Result, refuse } from '@almanac/units/result'
import { LIFE_FAMILIES, type LifeFamily, type LifeFamilyName } from '../lifetime/life-family.ts'
import type { LifeRecord } from '../lifetime/life-record.ts'
import { hermiteNodes } from '../numeric/gauss-hermite.ts'
import { inverseCurvature, maximise, type Surface } from '../numeric/maximise.ts'
import { fitLifetime, type LifeFit } from './fit-lifetime.ts'
import { type LifeTable, lifeLikelihood, lifeTable } from './life-likelihood.ts'

/** A supply's or area's own effect on ln life, given the records. */
export interface GroupEffect {
  readonly group: string
  readonly mean: number
  readonly sd: number
}

export interface GroupedLifeFit extends Omit<LifeFit, 'covariance'> {
  /** Spread of the groups' effects on ln life. */
  readonly groupSd: number
  /** Of (coefficients…, ln scale, ln groupSd), row-major. */
  readonly covariance: Float64Array
  readonly effects: readonly GroupEffect[]
}

/** Nodes around each group's own mode: plain quadrature around nil fails for large groups, whose likelihood is a spike. */
const NODES = 25

/**
 * Lives whose location is shifted by a normal effect common to each group (supply, area), by marginal maximum likelihood with adaptive Gauss–Hermite
 * quadrature (Pinheiro and Bates 1995); late entry is divided out inside the integral. Time O(steps × records × NODES).
 */
export function fitGroupedLifetime(
  records: readonly LifeRecord[],
  groups: readonly string[],
  family: LifeFamilyName,
  covariates = 0,
): Result<GroupedLifeFit> {
  const plain = fitLifetime(records, family, covariates)
  if (!plain.ok) return plain
  const byGroup = new Map<string, LifeRecord[]>()
  records.forEach((record, i) => {
    const key = groups[i] ?? ''
    const list = byGroup.get(key)
    if (list) list.push(record)
    else byGroup.set(key, [record])
  })
  if (byGroup.size < 3) return refuse('Effects of groups need at least three groups with records; the fit without them stays in use.')
  const model = LIFE_FAMILIES[family]
  const tables = [...byGroup].map(([group, list]) => ({ group, table: lifeTable(list, covariates), mode: 0 }))
  const size = covariates + 3
  const start = [...plain.value.coefficients, Math.log(plain.value.scale), Math.log(0.2)]
  const found = maximise((theta) => marginal(tables, model, theta), start)
  const covariance = inverseCurvature(found.surface.hessian, size)
  if (!found.converged || covariance === null) {
    return refuse('The effects of the groups could not be told from chance. The fit without them stays in use.')
  }
  const { theta } = found
  const effects = tables.map((item) => {
    const { mean, square } = integrate(item, model, theta)
    return { group: item.group, mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) }
  })
  return ok({
    family,
    coefficients: Array.from(theta.subarray(0, covariates + 1)),
    scale: Math.exp(theta[covariates + 1] as number),
    groupSd: Math.exp(theta[covariates + 2] as number),
    logLikelihood: found.surface.value,
    covariance,
    aic: 2 * size - 2 * found.surface.value,
    events: plain.value.events,
    iterations: found.iterations,
    effects,
  })
}

interface GroupTable {
  readonly group: string
  readonly table: LifeTable
  /** Where the last search for the mode ended; a start, never a result. */
  mode: number
}

interface GroupIntegral {
  readonly logValue: number
  readonly gradient: Float64Array
  readonly mean: number
  readonly square: number
}

/** ln ∫ L(u) φ(u/τ)/τ du of one group with its gradient: the mean of the inner derivatives under the effect's posterior. */
function integrate(item: GroupTable, family: LifeFamily, theta: Float64Array): GroupIntegral {
  const size = theta.length
  const tau = Math.exp(theta[size - 1] as number)
  const inner = theta.slice(0, size - 1)
  const at = (u: number) => {
    inner[0] = (theta[0] as number) + u
    return lifeLikelihood(item.table, family, inner)
  }
  const { mode, spread } = modeOf(item, at, tau)
  item.mode = mode
  const terms = hermiteNodes(NODES).map(({ x, weight }) => {
    const u = mode + Math.SQRT2 * spread * x
    const surface = at(u)
    // ln of φ(u/τ)/τ · √2·spread · weight (which carries e^(x²)).
    const log = surface.value - 0.5 * (u / tau) ** 2 - Math.log(tau) - 0.5 * Math.log(2 * Math.PI) + Math.log(Math.SQRT2 * spread * weight)
    return { u, log, gradient: surface.gradient }
  })
  const top = Math.max(...terms.map((term) => term.log))
  let sum = 0
  let mean = 0
  let square = 0
  const gradient = new Float64Array(size)
  for (const { u, log, gradient: slope } of terms) {
    const share = Math.exp(log - top)
    sum += share
    mean += share * u
    square += share * u * u
    for (let j = 0; j < size - 1; j++) gradient[j] = (gradient[j] as number) + share * (slope[j] as number)
    gradient[size - 1] = (gradient[size - 1] as number) + share * ((u / tau) ** 2 - 1)
  }
  for (let j = 0; j < size; j++) gradient[j] = (gradient[j] as number) / sum
  return { logValue: top + Math.log(sum), gradient, mean: mean / sum, square: square / sum }
}

function modeOf(
  item: GroupTable,
  at: (u: number) => { gradient: Float64Array; hessian: Float64Array },
  tau: number,
): { mode: number; spread: number } {
  let u = item.mode
  let curve = 1 / (tau * tau)
  for (let i = 0; i < 40; i++) {
    const { gradient, hessian } = at(u)
    curve = Math.max(1 / (tau * tau) - (hessian[0] as number), 1e-3 / (tau * tau))
    const step = ((gradient[0] as number) - u / (tau * tau)) / curve
    // A long Newton step from far out could overshoot; two spreads of the prior are far enough at once.
    u += Math.max(-2 * tau, Math.min(2 * tau, step))
    if (Math.abs(step) < 1e-10 * tau) break
  }
  return { mode: u, spread: 1 / Math.sqrt(curve) }
}

const STEP = 1e-4

function marginal(tables: readonly GroupTable[], family: LifeFamily, theta: Float64Array): Surface {
  const size = theta.length
  const total = (point: Float64Array) => {
    const gradient = new Float64Array(size)
    let value = 0
    for (const item of tables) {
      const part = integrate(item, family, point)
      value += part.logValue
      for (let j = 0; j < size; j++) gradient[j] = (gradient[j] as number) + (part.gradient[j] as number)
    }
    return { value, gradient }
  }
  const centre = total(theta)
  const hessian = new Float64Array(size * size)
  for (let i = 0; i < size; i++) {
    const up = theta.slice()
    const down = theta.slice()
    up[i] = (up[i] as number) + STEP
    down[i] = (down[i] as number) - STEP
    const above = total(up).gradient
    const below = total(down).gradient
    for (let j = 0; j < size; j++) {
      const half = ((above[j] as number) - (below[j] as number)) / (4 * STEP)
      hessian[i * size + j] = (hessian[i * size + j] as number) + half
      hessian[j * size + i] = (hessian[j * size + i] as number) + half
    }
  }
  return { ...centre, hessian }
}
