import type { LifeFamilyName } from '../lifetime/life-family.ts'
import { hermiteNodes } from '../numeric/gauss-hermite.ts'
import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { type PlainTable, placePlain, plainSlopes, plainTable, plainValue } from './plain-table.ts'
import { NODES, SPREAD } from './supply-marginal.ts'
import type { WearTable } from './wear-table.ts'

const SIZE = PARAMETER_KEYS.length

/** That effect is looked for to this share of the doubt about it: nodes set so far off the middle integrate as well. */
const NEAR = 0.05

/**
 * ln likelihood of a table by its log parameters, for asking it thousands of times: what lifePosterior climbs, without derivatives; with one parameter more, ln of the
 * supplies' spread, their effects are integrated out by adaptive Gauss–Hermite quadrature, each looked for from where it was at the parameters asked first.
 */
export function likelihoodOf(table: WearTable, family: LifeFamilyName): (theta: ArrayLike<number>) => number {
  const plain = plainTable(table, family)
  const starts = new Map<string, number>()
  return (theta) => {
    placePlain(plain, theta)
    let sum = 0
    for (const { supply, from, to } of table.supplies) {
      if (supply === null || theta.length === SIZE) sum += plainValue(plain, from, to, 0)
      else {
        const spread = Math.exp(theta[SPREAD] as number)
        const { mode, sd } = modeOf(plain, from, to, spread, starts.get(supply) ?? 0)
        if (!starts.has(supply)) starts.set(supply, mode)
        sum += integral(plain, from, to, spread, mode, sd)
      }
    }
    return sum
  }
}

/** Most likely effect of a supply and the doubt about it, by Newton's method. */
function modeOf(plain: PlainTable, from: number, to: number, spread: number, start: number): { mode: number; sd: number } {
  const precision = 1 / (spread * spread)
  let u = start
  let curve = precision
  for (let i = 0; i < 30; i++) {
    const slopes = plainSlopes(plain, from, to, u)
    curve = Math.max(precision - (slopes[1] as number), 1e-3 * precision)
    const step = ((slopes[0] as number) - precision * u) / curve
    u += Math.max(-2 * spread, Math.min(2 * spread, step))
    if (Math.abs(step) * Math.sqrt(curve) < NEAR) break
  }
  return { mode: u, sd: 1 / Math.sqrt(curve) }
}

/** ln ∫ L(u) φ(u/spread)/spread du. */
function integral(plain: PlainTable, from: number, to: number, spread: number, mode: number, sd: number): number {
  let [top, sum] = [Number.NEGATIVE_INFINITY, 0]
  for (const { x, weight } of hermiteNodes(NODES)) {
    const u = mode + Math.SQRT2 * sd * x
    const log = plainValue(plain, from, to, u) - 0.5 * (u / spread) ** 2 + Math.log(weight)
    if (log > top) {
      sum *= Math.exp(top - log)
      top = log
    }
    sum += Math.exp(log - top)
  }
  return top + Math.log(sum) + Math.log(sd / spread) - 0.5 * Math.log(Math.PI)
}
