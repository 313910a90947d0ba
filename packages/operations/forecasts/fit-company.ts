import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { pooledPrior } from '@almanac/forecast/fit/pool-firms'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { asCurrent, tradePriors } from '@almanac/forecast/priors/trade-priors'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import { type CompanyRecords, readCompanyRecords } from './company-records.ts'
import type { FitAnswer, FitInput } from './fit-aside.ts'
import { type Pool, readPool, sharedFigures } from './pool.ts'

/** Begins the hash of what was learned from: a changed method is a reason to fit the same records again. Old fits stay, with the forecasts that name them. */
export const METHOD = 'exposure-lives-5'

/** Ends the hash of a fit that started from other firms' figures as well. */
const POOLED = 'pool-'

const ASIDE = { module: '@almanac/operations/forecasts/fit-aside', seconds: 600, memoryMb: 4096 }

type Run = { companyId: string; runId: string; asOfDay: string }

/** A fit that settled for exactly these records, made before. */
async function fittedBefore(companyId: string, dataHash: string): Promise<string | null> {
  const found = await inCompany({ companyId }, (tx) =>
    tx.forecastFit.findFirst({
      where: { companyId, dataHash, fellBackBecause: null },
      orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }],
      select: { id: true },
    }),
  )
  return found?.id ?? null
}

/** What stays in use when a fit does not settle: the last that did, else the trade's first guesses, sharpened where the firm learns together with others. */
async function formerParameters(companyId: string, pool: Pool): Promise<ForecastParameters> {
  const last = await inCompany({ companyId }, (tx) =>
    tx.forecastFit.findFirst({
      // A firm that no longer learns together with others keeps nothing of theirs.
      where: { companyId, fellBackBecause: null, ...(pool ? {} : { dataHash: { not: { contains: POOLED } } }) },
      orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }],
      select: { parameters: true },
    }),
  )
  if (last) return asCurrent(last.parameters as unknown as ForecastParameters)
  return pooledPrior(tradePriors(), { optedIn: pool !== null, others: pool?.others ?? [] })
}

type Made = { id: string; version: string; startedAt: Date; dataHash: string }

async function storeFit(run: Run, made: Made, data: CompanyRecords, pool: Pool, { fit, own }: FitAnswer) {
  const former = fit.ok ? null : await formerParameters(run.companyId, pool)
  const tooLate = { reason: 'We first saw it after it had failed.', count: data.metTooLate }
  const leftOut = [...(fit.ok ? fit.value.leftOut : []), ...(data.metTooLate > 0 ? [tooLate] : [])]
  const { learned = {}, noEffectShare = null, logLikelihood = null, families = [], supplies = [], notes = [] } = fit.ok ? fit.value : {}
  await inCompany(run, (tx) =>
    tx.forecastFit.create({
      data: {
        companyId: run.companyId,
        ...made,
        asOfDay: dateOf(run.asOfDay),
        finishedAt: now(),
        records: fit.ok ? fit.value.used : data.records.length,
        failures: fit.ok ? fit.value.failures : 0,
        endedBeds: data.endedBeds,
        leftOut,
        summary: { learned, noEffectShare, logLikelihood, families: [...families], supplies: [...supplies], notes: [...notes] },
        parameters: (fit.ok ? fit.value.parameters : former) as object,
        ...(own ? { shared: sharedFigures(own) as object } : {}),
        fellBackBecause: fit.ok ? null : fit.reason,
      },
    }),
  )
}

/**
 * Fits a company's own records as known on the run's day and answers the fit's id. Written in one piece at its end: a fit that was broken off left nothing, and the
 * same records are not fitted twice. Where the firm learns together with others, it starts from what their fits say as well, and hands on what its own records say.
 * The arithmetic runs in a process of its own, so that a bed closed out meanwhile is forecast at once.
 */
export async function fitCompany(run: Run): Promise<string> {
  const startedAt = now()
  // Made before the records are read: ids are in order of time, and a sample graded after this one is not in the fit.
  const id = newId()
  const data = await readCompanyRecords(run.companyId)
  const pool = await readPool(run.companyId)
  const dataHash = [METHOD, data.dataHash, ...(pool ? [POOLED + pool.hash] : [])].join(':')
  const before = await fittedBefore(run.companyId, dataHash)
  if (before) return before
  const version = `fit-${run.asOfDay}-${id.slice(-6)}`
  const input: FitInput = { records: data.records, prior: tradePriors(), others: pool?.others ?? null, asOfDay: run.asOfDay, version }
  const answer = await runInWorkerThread<FitAnswer>({ ...ASIDE, companyId: run.companyId }, input)
  await storeFit(run, { id, version, startedAt, dataHash }, data, pool, answer)
  return id
}
