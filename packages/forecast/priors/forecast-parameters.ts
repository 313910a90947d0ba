/** Parameters of the life model, all positive and therefore kept as logarithms. The order fixes rows and columns of the covariance. */
export const PARAMETER_KEYS = [
  'medianCleanYears',
  'shape',
  'chlorineExponent',
  'chloramineWeight',
  'ironExponent',
  'crosslinkEffect',
  'throughputExponent',
  'temperatureEffect',
] as const

export type ParameterKey = (typeof PARAMETER_KEYS)[number]

/** Natural values of one set of parameters. */
export type ParameterValues = Readonly<Record<ParameterKey, number>>

/**
 * What the forecast knows about bed life: a normal distribution of the logarithms of PARAMETER_KEYS. Trade priors and a fit to a firm's records both
 * come in this shape, so that a refit changes numbers and nothing else. Plain data: may be stored as JSON.
 */
export interface ForecastParameters {
  /** Names the run that made it, e.g. 'trade-priors-1'. */
  readonly version: string
  readonly logMean: readonly number[]
  /** Row-major, PARAMETER_KEYS.length squared. */
  readonly logCovariance: readonly number[]
  /** A second model, averaged in with its share of belief (0 to 1); e.g. that the water does nothing to this firm's beds. */
  readonly alternative?: { readonly share: number; readonly logMean: readonly number[]; readonly logCovariance: readonly number[] }
  /** Residuals assumed where nobody wrote them down, mg/L. */
  readonly assumedWater: {
    readonly freeChlorineMgL: number
    readonly chloramineMgL: number
    readonly unknownSupplyFreeChlorineMgL: number
    readonly ironMgL: number
  }
  readonly sources: readonly string[]
}
