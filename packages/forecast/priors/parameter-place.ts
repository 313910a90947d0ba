import normalLogCdf from '@stdlib/stats-base-dists-normal-logcdf'
import { type ForecastParameters, PARAMETER_KEYS, type ParameterKey } from './forecast-parameters.ts'
import { modelsOf } from './parameter-nodes.ts'

/** Chance, by all models together, that a parameter is at most `value`: where a known truth falls in what is believed. */
export function parameterPlace(parameters: ForecastParameters, key: ParameterKey, value: number): number {
  const i = PARAMETER_KEYS.indexOf(key)
  return modelsOf(parameters).reduce((sum, { share, logMean, logCovariance }) => {
    const sd = Math.sqrt(logCovariance[i * PARAMETER_KEYS.length + i] as number)
    return sum + share * Math.exp(normalLogCdf((Math.log(value) - (logMean[i] as number)) / sd, 0, 1))
  }, 0)
}

/** The parameter's value below which lies a share p of belief, by all models together. */
export function parameterQuantile(parameters: ForecastParameters, key: ParameterKey, p: number): number {
  let [low, high] = [-20, 20]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (parameterPlace(parameters, key, Math.exp(middle)) < p) low = middle
    else high = middle
  }
  return Math.exp((low + high) / 2)
}
