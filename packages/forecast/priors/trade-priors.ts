import { type ForecastParameters, PARAMETER_KEYS, type ParameterKey } from './forecast-parameters.ts'

export interface Prior {
  readonly median: number
  /** Standard deviation of the logarithm. */
  readonly logSd: number
  readonly unit: string
  /** What the number means and where it comes from. */
  readonly source: string
}

/** First guesses from the trade, wide on purpose; docs/decisions/forecast-priors.md says why. */
export const TRADE_PRIORS: Readonly<Record<ParameterKey, Prior>> = {
  medianCleanYears: {
    median: 13.5,
    logSd: 0.15,
    unit: 'years',
    source: 'Domestic bed of 8% crosslink on clean water: 12 to 15 years. Common practice, no source.',
  },
  shape: {
    median: 3,
    logSd: 0.2,
    unit: '',
    source:
      'Weibull shape 3 puts about 95% of lives on clean water between 5 and 25 years, the span given in UFC 3-240-13FN (2005) §2-2.5.1.4 for institutional softeners.',
  },
  chlorineExponent: {
    median: 0.7,
    logSd: 0.3,
    unit: '',
    source:
      'Life falls as (1 + mg/L) to this power. About 10 years at up to 1 mg/L free chlorine and half that above 2 mg/L (common practice, no source); no accepted mg/L·years law exists.',
  },
  chloramineWeight: {
    median: 1,
    logSd: 0.5,
    unit: 'mg/L free chlorine per mg/L chloramine',
    source:
      'Trade opinion holds chloramine worse than chlorine, chemistry calls it the weaker oxidant: contested, so centred on equal and wide. Common practice, no source.',
  },
  ironExponent: {
    median: 0.35,
    logSd: 0.5,
    unit: '',
    source:
      'Life falls as (1 + mg/L iron) to this power; iron fouls and shortens life, tolerated up to about 2 mg/L. Common practice, no source.',
  },
  crosslinkEffect: {
    median: 0.22,
    logSd: 0.4,
    unit: 'log of life, 10% against 8%',
    source: '10% crosslink outlasts 8%; the amount (about a quarter longer) is a guess. Common practice, no source.',
  },
  throughputExponent: {
    median: 0.15,
    logSd: 0.6,
    unit: '',
    source: 'A busier bed wears sooner: life falls as throughput per ft³ to this power. A guess; common practice, no source.',
  },
  temperatureEffect: {
    median: 0.3,
    logSd: 0.5,
    unit: 'log of life per 10 °C',
    source: 'Oxidation runs faster in warm water; 1.35 times per 10 °C is a cautious guess below the chemist’s rule of two. From memory.',
  },
  callOdds: {
    median: 4,
    logSd: 0.8,
    unit: 'households that call the firm when their water turns hard, for each that does not',
    source:
      'Four in five call within half a year, from two in three to nine in ten: hard water shows, but some move, forget or live with it. Common practice, no source.',
  },
  removalRate: {
    median: 0.01,
    logSd: 1,
    unit: 'beds taken out while they worked, a bed and year',
    source: 'One bed in a hundred a year goes for another reason (a new house, a cracked tank). Common practice, no source.',
  },
}

/** The trade priors in the shape every forecast takes; independent of each other. */
export function tradePriors(): ForecastParameters {
  const size = PARAMETER_KEYS.length
  const logCovariance = new Array<number>(size * size).fill(0)
  PARAMETER_KEYS.forEach((key, i) => {
    logCovariance[i * size + i] = TRADE_PRIORS[key].logSd ** 2
  })
  return {
    version: 'trade-priors-2',
    logMean: PARAMETER_KEYS.map((key) => Math.log(TRADE_PRIORS[key].median)),
    logCovariance,
    // Common practice, no source: usual residuals at the tap; the federal maximum for either is 4.0 mg/L as Cl2 (40 CFR 141.65).
    assumedWater: { freeChlorineMgL: 0.8, chloramineMgL: 2, unknownSupplyFreeChlorineMgL: 0.7, ironMgL: 0 },
    sources: PARAMETER_KEYS.map((key) => TRADE_PRIORS[key].source),
  }
}

/** Parameters stored by an earlier release with those that came since, at the trade's guess; the same object where nothing is lacking. */
export function asCurrent<T extends Pick<ForecastParameters, 'logMean' | 'logCovariance' | 'alternatives'>>(stored: T): T {
  const before = stored.logMean.length
  const size = PARAMETER_KEYS.length
  if (before >= size) return stored
  const logCovariance = new Array<number>(size * size).fill(0)
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      if (i < before && j < before) logCovariance[i * size + j] = stored.logCovariance[i * before + j] ?? Number.NaN
  const added = PARAMETER_KEYS.slice(before)
  added.forEach((key, n) => {
    logCovariance[(before + n) * (size + 1)] = TRADE_PRIORS[key].logSd ** 2
  })
  const logMean = [...stored.logMean, ...added.map((key) => Math.log(TRADE_PRIORS[key].median))]
  return { ...stored, logMean, logCovariance, ...(stored.alternatives ? { alternatives: stored.alternatives.map(asCurrent) } : {}) }
}
