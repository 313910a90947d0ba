import { ok, type Result } from '@almanac/units/result'
import { fitLifetime } from '../fit/fit-lifetime.ts'
import type { LifeRecord } from './life-record.ts'
import type { Weibull } from './weibull.ts'

export interface WeibullFit extends Weibull {
  readonly logLikelihood: number
  readonly events: number
}

/** Weibull life by maximum likelihood, without covariates or prior: shape = 1/scale and scale = e^intercept of fitLifetime. */
export function fitWeibull(records: readonly LifeRecord[]): Result<WeibullFit> {
  const fit = fitLifetime(records, 'weibull')
  if (!fit.ok) return fit
  const { coefficients, scale, logLikelihood, events } = fit.value
  return ok({ shape: 1 / scale, scale: Math.exp(coefficients[0] as number), logLikelihood, events })
}
