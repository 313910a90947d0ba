import type { LifeFamilyName } from '../lifetime/life-family.ts'

/**
 * Parameters of the life model and of how records arise, all positive and therefore kept as logarithms. The order fixes rows and columns of the covariance; new ones are
 * added at the end, and `asCurrent` fills them in where a stored fit is older.
 */
export const PARAMETER_KEYS = [
  'medianCleanYears',
  'shape',
  'chlorineExponent',
  'chloramineWeight',
  'ironExponent',
  'crosslinkEffect',
  'throughputExponent',
  'temperatureEffect',
  'callOdds',
  'removalRate',
] as const

export type ParameterKey = (typeof PARAMETER_KEYS)[number]

/** Natural values of one set of parameters. */
export type ParameterValues = Readonly<Record<ParameterKey, number>>

/** One model of bed life: a normal distribution of the logarithms of PARAMETER_KEYS. */
export interface LifeModel {
  /** Share of belief, 0 to 1. */
  readonly share: number
  /** Distribution of life at given parameters; Weibull when left out. `shape` means the same spread of ln life in each. */
  readonly family?: LifeFamilyName
  readonly logMean: readonly number[]
  readonly logCovariance: readonly number[]
  /** Effects of supplies as this model sees them; left out, as the main model does. */
  readonly supplies?: SupplyEffects
}

/** The effect on ln life that the beds of one supply share beyond what the water explains. */
export interface SupplyEffect {
  readonly supply: string
  readonly mean: number
  /** Doubt left when the parameters are known. */
  readonly sd: number
  /** How the mean moves with each log parameter: a supply can be long-lived or the firm, not both. */
  readonly slope: readonly number[]
}

export interface SupplyEffects {
  /** Spread of the effects between supplies, for one that was not in the records. */
  readonly spread: number
  readonly known: readonly SupplyEffect[]
}

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
  /** Distribution of life of the main model; Weibull when left out. */
  readonly family?: LifeFamilyName
  /** Further models, averaged in with their shares of belief: other families, or that the water does nothing to this firm's beds. */
  readonly alternatives?: readonly LifeModel[]
  /** One further model, as fits wrote it before there could be several. */
  readonly alternative?: LifeModel
  /** What the beds of a supply share; absent: not told apart. */
  readonly supplies?: SupplyEffects
  /** Residuals assumed where nobody wrote them down, mg/L. */
  readonly assumedWater: {
    readonly freeChlorineMgL: number
    readonly chloramineMgL: number
    readonly unknownSupplyFreeChlorineMgL: number
    readonly ironMgL: number
  }
  /** Mean years by which a bed of unknown beginning had begun before it was first seen; absent: not learned, each day as likely as another. */
  readonly yearsBeforeMet?: number
  readonly sources: readonly string[]
}
