import type { IsoDay } from '@almanac/units/calendar/day-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import type { LifeFamilyName } from '../lifetime/life-family.ts'
import { type ForecastParameters, type LifeModel, PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { wholeSd } from '../priors/parameter-nodes.ts'
import type { BedRecord } from './bed-record.ts'
import { chooseModels, settleModel, type WeighedModel } from './choose-models.ts'
import { type ReadRecord, readRecord } from './read-record.ts'
import { wearTable } from './wear-table.ts'
import { yearsBeforeMet } from './years-before-met.ts'

export interface RecordsFit {
  /** To be used in place of the prior by every later forecast. */
  readonly parameters: ForecastParameters
  readonly used: number
  readonly failures: number
  /** Why records were kept out, and how many. */
  readonly leftOut: readonly { readonly reason: string; readonly count: number }[]
  /** Of the main model at its mode, without the penalty. */
  readonly logLikelihood: number
  /** Share of the prior's variance of each parameter that the records took away: 0 nothing learned, 1 all from the records. */
  readonly learned: Readonly<Record<string, number>>
  /** Belief, after the records, that nothing but age makes a difference to this firm's beds; that model is averaged in with this share. */
  readonly noEffectShare: number
  /** Belief in each distribution of life, over all models. */
  readonly families: readonly { readonly family: LifeFamilyName; readonly share: number }[]
  /** Effect on ln life of each supply told apart: e^mean is the factor on life. */
  readonly supplies: readonly { readonly supply: string; readonly mean: number; readonly sd: number }[]
  /** What fell back to something simpler, in sentences. */
  readonly notes: readonly string[]
}

const SIZE = PARAMETER_KEYS.length

/** Correcting the posterior of a model that hardly counts is not worth its time. */
const SHARE_TO_CORRECT = 0.15

/** A model with less belief than one node of the forecast stands for is left out. */
const LEAST_SHARE = 0.03

/**
 * The firm's own parameters: penalised maximum likelihood of its bed records under cumulative exposure with late entry, intervals and uncertain beginnings;
 * the penalty is the published prior, so few failures stay near it and many follow the data. Distributions of life and the model of age alone are averaged, supplies
 * share effects, and the posterior's mean and covariance are used, not its mode. Only what was known on `asOfDay` is used. Deterministic. Refuses, with the prior to
 * stay in use, when there is no record to learn from or no fit settles.
 */
export function fitBedRecords(
  records: readonly BedRecord[],
  trade: ForecastParameters,
  asOfDay: IsoDay,
  version: string,
): Result<RecordsFit> {
  const prior = { ...trade, yearsBeforeMet: yearsBeforeMet(records, asOfDay) }
  const read: ReadRecord[] = []
  const supplies: (string | null)[] = []
  const leftOut = new Map<string, number>()
  for (const record of records) {
    const one = readRecord(record, asOfDay, prior)
    if (one.ok) {
      read.push(one)
      supplies.push(record.supply ?? null)
    } else leftOut.set(one.reason, (leftOut.get(one.reason) ?? 0) + 1)
  }
  const table = wearTable(read, supplies)
  // Survivors alone teach as well: that nothing has failed yet is news about beds that are old.
  if (table.count === 0) return refuse('No bed on record can be learned from yet. The trade’s first guesses stay in use.')
  const notes: string[] = []
  const models = chooseModels(table, prior, notes)
  const first = models[0]
  if (first === undefined) return refuse('We couldn’t learn from your records this time, so the earlier numbers stay in use.')
  const main = settleModel(table, first, true, true, notes)
  const others = models.slice(1).filter(({ share }) => share > LEAST_SHARE)
  const kept = first.share + others.reduce((sum, { share }) => sum + share, 0)
  const parameters: ForecastParameters = {
    version,
    family: main.posterior.family,
    logMean: main.posterior.logMean,
    logCovariance: main.posterior.logCovariance,
    ...(others.length > 0
      ? {
          alternatives: others.map((model): LifeModel => {
            const { posterior, supplies: own } = settleModel(table, model, model.share > SHARE_TO_CORRECT, false, [])
            const { family, logMean, logCovariance } = posterior
            return { share: model.share / kept, family, logMean, logCovariance, ...(own === null ? {} : { supplies: own }) }
          }),
        }
      : {}),
    ...(main.supplies === null ? {} : { supplies: main.supplies }),
    assumedWater: prior.assumedWater,
    yearsBeforeMet: prior.yearsBeforeMet,
    sources: [
      `Fitted to ${table.failures === 0 ? 'no failure' : table.failures === 1 ? '1 failure' : `${table.failures} failures`} among ${table.count} beds on record, starting from ${prior.version}.`,
      ...prior.sources,
    ],
  }
  return ok({
    parameters,
    used: table.count,
    failures: table.failures,
    leftOut: [...leftOut].map(([reason, count]) => ({ reason, count })),
    logLikelihood: first.posterior.logLikelihood,
    learned: learnedFrom(models, prior),
    noEffectShare: models.reduce((sum, { noEffect, share }) => sum + (noEffect ? share : 0), 0),
    families: familyShares(models),
    supplies: (main.supplies?.known ?? []).map((effect) => ({
      supply: effect.supply,
      mean: effect.mean,
      sd: wholeSd(effect, main.posterior.logCovariance),
    })),
    notes,
  })
}

/** By the best model with effects. */
function learnedFrom(models: readonly WeighedModel[], prior: ForecastParameters): Record<string, number> {
  const full = models.find(({ noEffect }) => !noEffect)?.posterior
  return Object.fromEntries(
    PARAMETER_KEYS.map((key, i) => {
      const at = i * SIZE + i
      return [
        key,
        full === undefined ? 0 : 1 - (full.logCovariance[i * full.logMean.length + i] as number) / (prior.logCovariance[at] as number),
      ]
    }),
  )
}

function familyShares(models: readonly WeighedModel[]): { family: LifeFamilyName; share: number }[] {
  const shares = new Map<LifeFamilyName, number>()
  for (const { posterior, share } of models) shares.set(posterior.family, (shares.get(posterior.family) ?? 0) + share)
  return [...shares].map(([family, share]) => ({ family, share })).sort((a, b) => b.share - a.share)
}
