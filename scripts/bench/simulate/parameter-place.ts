import { type ForecastParameters, PARAMETER_KEYS, type ParameterKey } from '@almanac/forecast/priors/forecast-parameters'
import { modelsOf } from '@almanac/forecast/priors/parameter-nodes'
import normalLogCdf from '@stdlib/stats-base-dists-normal-logcdf'

/** Chance, by all models together, that a parameter is at most `value`: where a known truth falls in what is believed. */
export function parameterPlace(parameters: ForecastParameters, key: ParameterKey, value: number): number {
  const i = PARAMETER_KEYS.indexOf(key)
  return modelsOf(parameters).reduce((sum, { share, logMean, logCovariance }) => {
    const sd = Math.sqrt(logCovariance[i * PARAMETER_KEYS.length + i] as number)
    return sum + share * Math.exp(normalLogCdf((Math.log(value) - (logMean[i] as number)) / sd, 0, 1))
  }, 0)
}
