import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import type { RecordsFit } from '@almanac/forecast/fit/fit-bed-records'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { runAside } from '@almanac/runtime/run-aside'
import type { Result } from '@almanac/units/result'
import { type CompanyRecords, readCompanyRecords } from './company-records.ts'
import type { FitInput } from './fit-aside.ts'

/** Begins the hash of what was learned from: a changed method is a reason to fit the same records again. Old fits stay, with the forecasts that name them. */
export const METHOD = 'exposure-lives-2'

type Run = { companyId: string; runId: string; asOfDay: string }

/** A fit that settled for exactly these records, made before. */
async function fittedBefore(companyId: string, dataHash: string): Promise<string | null> {
  const found = await inCompany({ companyId }, (tx) =>
    tx.forecastFit.findFirst({
      where: { companyId, dataHash, fellBackBecause: null },
      orderBy: { finishedAt: 'desc' },
      select: { id: true },
    }),
  )
  return found?.id ?? null
}

/** What stays in use when a fit does not settle: the last that did, else the trade's first guesses. */
async function formerParameters(companyId: string): Promise<ForecastParameters> {
  const last = await inCompany({ companyId }, (tx) =>
    tx.forecastFit.findFirst({
      where: { companyId, fellBackBecause: null },
      orderBy: { finishedAt: 'desc' },
      select: { parameters: true },
    }),
  )
  return last ? (last.parameters as unknown as ForecastParameters) : tradePriors()
}

async function storeFit(run: Run, startedAt: Date, data: CompanyRecords, dataHash: string, version: string, fit: Result<RecordsFit>) {
  const former = fit.ok ? null : await formerParameters(run.companyId)
  const tooLate = { reason: 'It was met only when it had failed.', count: data.metTooLate }
  const leftOut = [...(fit.ok ? fit.value.leftOut : []), ...(data.metTooLate > 0 ? [tooLate] : [])]
  const { learned, noEffectShare, logLikelihood } = fit.ok ? fit.value : { learned: {}, noEffectShare: null, logLikelihood: null }
  const id = newId()
  await inCompany(run, (tx) =>
    tx.forecastFit.create({
      data: {
        companyId: run.companyId,
        id,
        version,
        asOfDay: dateOf(run.asOfDay),
        startedAt,
        finishedAt: now(),
        dataHash,
        records: fit.ok ? fit.value.used : data.records.length,
        failures: fit.ok ? fit.value.failures : 0,
        endedBeds: data.endedBeds,
        leftOut,
        summary: { learned, noEffectShare, logLikelihood },
        parameters: (fit.ok ? fit.value.parameters : former) as object,
        fellBackBecause: fit.ok ? null : fit.reason,
      },
    }),
  )
  return id
}

/**
 * Fits a company's own records as known on the run's day and answers the fit's id. Written in one piece at its end: a fit that was broken off left nothing, and the
 * same records are not fitted twice. The arithmetic runs in a thread of its own, so that a bed closed out meanwhile is forecast at once.
 */
export async function fitCompany(run: Run): Promise<string> {
  const startedAt = now()
  const data = await readCompanyRecords(run.companyId)
  const dataHash = `${METHOD}:${data.dataHash}`
  const before = await fittedBefore(run.companyId, dataHash)
  if (before) return before
  const version = `fit-${run.asOfDay}-${newId().slice(-6)}`
  const input: FitInput = { records: data.records, prior: tradePriors(), asOfDay: run.asOfDay, version }
  const fit = await runAside<Result<RecordsFit>>(new URL('./fit-aside.ts', import.meta.url).href, 'fitAside', input)
  return storeFit(run, startedAt, data, dataHash, version, fit)
}
