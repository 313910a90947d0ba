import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import type { Derivatives } from './mixed-terms.ts'
import { CALLS, REMOVED, SILENT } from './record-ways.ts'

/** Places of how records arise among the parameters. */
const CALL_ODDS = PARAMETER_KEYS.indexOf('callOdds')
export const REMOVAL_RATE = PARAMETER_KEYS.indexOf('removalRate')

/** ln of the chance of a case's sort: of a household that calls, of one that does not, of a removal a year; nil for a plain one. */
export function sortLog(sort: number, theta: ArrayLike<number>): number {
  if (sort === CALLS) return -Math.log1p(Math.exp(-(theta[CALL_ODDS] as number)))
  if (sort === SILENT) return -Math.log1p(Math.exp(theta[CALL_ODDS] as number))
  return sort === REMOVED ? (theta[REMOVAL_RATE] as number) : 0
}

/** Adds the chance of a case's sort. */
export function addSort(sort: number, theta: ArrayLike<number>, out: Derivatives): void {
  out.value += sortLog(sort, theta)
  if (sort === REMOVED) out.gradient[REMOVAL_RATE] = (out.gradient[REMOVAL_RATE] as number) + 1
  if (sort !== CALLS && sort !== SILENT) return
  const calls = 1 / (1 + Math.exp(-(theta[CALL_ODDS] as number)))
  out.gradient[CALL_ODDS] = (out.gradient[CALL_ODDS] as number) + (sort === CALLS ? 1 - calls : -calls)
  out.addAt(CALL_ODDS, CALL_ODDS, -calls * (1 - calls))
}

/** Chance that no other reason took the bed out while it could: e^(−rate · years). */
export function addStaying(years: number, theta: ArrayLike<number>, out: Derivatives): void {
  if (years === 0) return
  const by = -Math.exp(theta[REMOVAL_RATE] as number) * years
  out.value += by
  out.gradient[REMOVAL_RATE] = (out.gradient[REMOVAL_RATE] as number) + by
  out.addAt(REMOVAL_RATE, REMOVAL_RATE, by)
}
