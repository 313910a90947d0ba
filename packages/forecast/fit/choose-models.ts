import type { LifeFamilyName } from '../lifetime/life-family.ts'
import { type ForecastParameters, PARAMETER_KEYS, type ParameterKey, type SupplyEffects } from '../priors/forecast-parameters.ts'
import { correctedPosterior } from './corrected-posterior.ts'
import { type LogNormal, lifePosterior, type Posterior } from './life-posterior.ts'
import { placeTable } from './place-table.ts'
import { SPREAD, supplyEffect } from './supply-marginal.ts'
import type { WearTable } from './wear-table.ts'

const SIZE = PARAMETER_KEYS.length

/** Belief, before any record, that nothing but age makes a difference worth the name. A guess that lets the records say so. */
export const NO_EFFECT_BELIEF = 0.2

/** Belief in each distribution of life before any record: Weibull is what the trade's own reliability books use for wear-out; the rest is an open question. */
export const FAMILY_BELIEF: Readonly<Record<LifeFamilyName, number>> = { weibull: 0.5, lognormal: 0.25, loglogistic: 0.25 }

const EFFECT_KEYS: readonly ParameterKey[] = [
  'chlorineExponent',
  'ironExponent',
  'crosslinkEffect',
  'throughputExponent',
  'temperatureEffect',
]

export interface WeighedModel {
  readonly posterior: Posterior
  readonly prior: LogNormal
  readonly noEffect: boolean
  readonly share: number
}

/** Up to so many failures every model has the supplies' effects in it; beyond, the records tell models apart without them, and only the main one gets them. */
const GROUPED_UP_TO = 1000

/** A model's posterior, with the effects of supplies where the table has enough of them and few enough records; without them where that does not settle. */
function posteriorOf(table: WearTable, family: LifeFamilyName, prior: LogNormal, start: readonly number[] | undefined): Posterior | null {
  const plain = lifePosterior(table, family, prior, start)
  if (plain === null || table.failures > GROUPED_UP_TO || namedOf(table).length < LEAST_SUPPLIES) return plain
  return lifePosterior(table, family, withSpread(prior), [...plain.logMean, SPREAD_PRIOR.logMean]) ?? plain
}

function namedOf(table: WearTable) {
  return table.supplies.filter(({ supply }) => supply !== null)
}

/**
 * The three distributions of life with all effects, and the best of them with age alone, weighed by belief × marginal likelihood (of which Schwarz's criterion is the
 * large-sample form); largest share first. Those that do not settle are left out and said in `notes`. Empty when none does.
 */
export function chooseModels(table: WearTable, prior: ForecastParameters, notes: string[]): WeighedModel[] {
  const found: { posterior: Posterior; prior: LogNormal; noEffect: boolean; belief: number }[] = []
  for (const family of Object.keys(FAMILY_BELIEF) as LifeFamilyName[]) {
    const posterior = posteriorOf(table, family, prior, found[0]?.posterior.logMean.slice(0, SIZE))
    if (posterior === null) notes.push(`The ${family} distribution didn’t fit these records and is left out.`)
    else found.push({ posterior, prior, noEffect: false, belief: (1 - NO_EFFECT_BELIEF) * FAMILY_BELIEF[family] })
  }
  const first = found.reduce<(typeof found)[number] | null>(
    (best, one) => (best !== null && logScore(best) >= logScore(one) ? best : one),
    null,
  )
  if (first === null) return []
  const idlePrior = ageAlone(prior)
  const idle = posteriorOf(table, first.posterior.family, idlePrior, undefined)
  if (idle === null) notes.push('The age-only model didn’t fit these records and is left out.')
  else found.push({ posterior: idle, prior: idlePrior, noEffect: true, belief: NO_EFFECT_BELIEF * FAMILY_BELIEF[first.posterior.family] })
  const most = Math.max(...found.map(logScore))
  const total = found.reduce((sum, one) => sum + Math.exp(logScore(one) - most), 0)
  return found
    .map(({ belief, ...one }) => ({ ...one, share: Math.exp(logScore({ ...one, belief }) - most) / total }))
    .sort((a, b) => b.share - a.share)
}

function logScore({ posterior, belief }: { posterior: Posterior; belief: number }): number {
  return posterior.logEvidence + Math.log(belief)
}

/** The prior with all effects held at nil: age alone. */
export function ageAlone(prior: LogNormal): LogNormal {
  const held = PARAMETER_KEYS.map((key) => EFFECT_KEYS.includes(key))
  return {
    logMean: prior.logMean.map((mean, i) => (held[i] ? Math.log(1e-4) : mean)),
    logCovariance: prior.logCovariance.map((value, index) => {
      const i = Math.floor(index / SIZE)
      const j = index % SIZE
      if (held[i] || held[j]) return i === j ? 1e-6 : 0
      return value
    }),
  }
}

/** Spread of supplies' effects on ln life before any record: 8%, from 2 to 30%. A guess; common practice, no source. */
export const SPREAD_PRIOR = { logMean: Math.log(0.08), logSd: 0.7 } as const

/** Fewer supplies with beds on record do not tell their spread from chance. */
const LEAST_SUPPLIES = 3

export interface MainPosterior {
  readonly posterior: Posterior
  readonly supplies: SupplyEffects | null
}

/**
 * A model's posterior for use: mean and covariance rather than mode and curvature where `corrects`, and with the effects of supplies where there are enough. What
 * does not settle falls back to the model without them and says so in `notes`.
 */
export function settleModel(table: WearTable, model: WeighedModel, corrects: boolean, groups: boolean, notes: string[]): MainPosterior {
  const { posterior, prior } = model
  const named = namedOf(table)
  const correct = (found: Posterior, own: LogNormal) => (corrects ? correctedPosterior(table, found, own) : found)
  const without = () => ({ posterior: correct(posterior, prior), supplies: null })
  if (named.length > 0 && named.length < LEAST_SUPPLIES)
    notes.push('Supplies are not compared yet: we need beds on record on three of them.')
  if (named.length < LEAST_SUPPLIES) return without()
  const wide = withSpread(prior)
  const isWide = posterior.logMean.length > SIZE
  if (!isWide && !groups) return without()
  const grouped = isWide ? posterior : lifePosterior(table, posterior.family, wide, [...posterior.logMean, SPREAD_PRIOR.logMean])
  if (grouped === null) {
    notes.push('Supplies show no difference beyond chance, so we use the forecast without them.')
    return without()
  }
  const corrected = correct(grouped, wide)
  const spread = Math.exp(corrected.logMean[SPREAD] as number)
  const placed = placeTable(table, posterior.family, corrected.logMean)
  return {
    posterior: {
      ...corrected,
      logMean: corrected.logMean.slice(0, SIZE),
      logCovariance: narrow(corrected.logCovariance),
    },
    supplies: { spread, known: named.map(({ supply, from, to }) => supplyEffect(placed, supply ?? '', from, to, spread)) },
  }
}

function withSpread(prior: LogNormal): LogNormal {
  const size = SIZE + 1
  const logCovariance = new Array<number>(size * size).fill(0)
  for (let i = 0; i < SIZE; i++) for (let j = 0; j < SIZE; j++) logCovariance[i * size + j] = prior.logCovariance[i * SIZE + j] as number
  logCovariance[size * size - 1] = SPREAD_PRIOR.logSd ** 2
  return { logMean: [...prior.logMean, SPREAD_PRIOR.logMean], logCovariance }
}

/** The block of the life parameters. */
function narrow(wide: readonly number[]): number[] {
  const size = SIZE + 1
  return Array.from({ length: SIZE * SIZE }, (_, at) => wide[Math.floor(at / SIZE) * size + (at % SIZE)] as number)
}
