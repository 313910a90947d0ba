import { hermiteNodes } from '../numeric/gauss-hermite.ts'
import { PARAMETER_KEYS, type SupplyEffect } from '../priors/forecast-parameters.ts'
import { addRecords } from './add-records.ts'
import { derivatives } from './derivatives.ts'
import type { PlacedTable } from './place-table.ts'
import { shiftTerms } from './shift-terms.ts'

const SIZE = PARAMETER_KEYS.length

/** Place of ln spread behind the life parameters. */
export const SPREAD = SIZE

/** Nodes around each supply's own mode (Pinheiro and Bates 1995). */
export const NODES = 7

const local = derivatives()
const WIDE = SIZE + 1
const mean = new Float64Array(WIDE)
const square = new Float64Array(WIDE * WIDE)
const slope = new Float64Array(WIDE)

/** Value, gradient and Hessian (full, row-major) by the life parameters and ln spread. */
export interface WideDerivatives {
  value: number
  readonly gradient: Float64Array
  readonly hessian: Float64Array
}

/** Adds ln ∫ L(u) φ(u/spread)/spread du over the shared effect u of records [from, to), by adaptive Gauss–Hermite quadrature. */
export function addSupply(placed: PlacedTable, from: number, to: number, spread: number, out: WideDerivatives): void {
  const { mode, sd } = supplyMode(placed, from, to, spread)
  const nodes = hermiteNodes(NODES)
  let top = Number.NEGATIVE_INFINITY
  let sum = 0
  for (const { x, weight } of nodes) {
    const u = mode + Math.SQRT2 * sd * x
    local.clear()
    addRecords(placed, from, to, u, local)
    const log = local.value - 0.5 * (u / spread) ** 2 - Math.log(spread) - 0.5 * Math.log(2 * Math.PI) + Math.log(Math.SQRT2 * sd * weight)
    if (log > top) {
      const shrink = Math.exp(top - log)
      sum *= shrink
      for (let i = 0; i < WIDE; i++) mean[i] = (mean[i] as number) * shrink
      for (let i = 0; i < WIDE * WIDE; i++) square[i] = (square[i] as number) * shrink
      top = log
    }
    const share = Math.exp(log - top)
    sum += share
    slope.set(local.gradient)
    slope[SPREAD] = (u / spread) ** 2 - 1
    for (let i = 0; i < WIDE; i++) {
      mean[i] = (mean[i] as number) + share * (slope[i] as number)
      for (let j = 0; j <= i; j++) {
        const bend = i < SIZE ? (local.hessian[i * SIZE + j] as number) : j < SIZE ? 0 : -2 * (u / spread) ** 2
        const at = i * WIDE + j
        square[at] = (square[at] as number) + share * (bend + (slope[i] as number) * (slope[j] as number))
      }
    }
  }
  out.value += top + Math.log(sum)
  for (let i = 0; i < WIDE; i++) {
    const own = (mean[i] as number) / sum
    out.gradient[i] = (out.gradient[i] as number) + own
    for (let j = 0; j <= i; j++) {
      const by = (square[i * WIDE + j] as number) / sum - (own * (mean[j] as number)) / sum
      out.hessian[i * WIDE + j] = (out.hessian[i * WIDE + j] as number) + by
      if (i !== j) out.hessian[j * WIDE + i] = (out.hessian[j * WIDE + i] as number) + by
    }
  }
  mean.fill(0)
  square.fill(0)
}

/** Most likely effect of a supply at given parameters and its spread around it. */
function supplyMode(placed: PlacedTable, from: number, to: number, spread: number): { mode: number; sd: number } {
  const precision = 1 / (spread * spread)
  let u = 0
  let curve = precision
  for (let i = 0; i < 30; i++) {
    const terms = shiftTerms(placed, from, to, u)
    curve = Math.max(precision - (terms[2] as number), 1e-3 * precision)
    const step = ((terms[1] as number) - precision * u) / curve
    u += Math.max(-2 * spread, Math.min(2 * spread, step))
    if (Math.abs(step) < 1e-6 * spread) break
  }
  return { mode: u, sd: 1 / Math.sqrt(curve) }
}

/** A supply's effect after the records, with how it would move if the life parameters did. */
export function supplyEffect(placed: PlacedTable, supply: string, from: number, to: number, spread: number): SupplyEffect {
  const { mode, sd } = supplyMode(placed, from, to, spread)
  local.clear()
  addRecords(placed, from, to, mode, local)
  // The mode holds ∂ℓ/∂u = u/spread²; ∂/∂u is ∂/∂(ln median), so the mixed derivatives stand in the first column.
  const stiffness = 1 / (spread * spread) - (local.hessian[0] as number)
  const slope = PARAMETER_KEYS.map((_, j) => (local.hessian[j * SIZE] as number) / stiffness)
  return { supply, mean: mode, sd, slope }
}
