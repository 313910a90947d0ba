import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { CALLS, PLAIN, REMOVED, SILENT } from './record-ways.ts'

/** Places of how records arise among the parameters. */
export const CALL_ODDS = PARAMETER_KEYS.indexOf('callOdds')
export const REMOVAL_RATE = PARAMETER_KEYS.indexOf('removalRate')

/** All sorts, each at its own place. */
export const SORTS = [PLAIN, CALLS, SILENT, REMOVED] as const

/** ln of the chance of a case's sort: of a household that calls, of one that does not, of a removal a year; nil for a plain one. */
export function sortLog(sort: number, theta: ArrayLike<number>): number {
  if (sort === CALLS) return -Math.log1p(Math.exp(-(theta[CALL_ODDS] as number)))
  if (sort === SILENT) return -Math.log1p(Math.exp(theta[CALL_ODDS] as number))
  return sort === REMOVED ? (theta[REMOVAL_RATE] as number) : 0
}
