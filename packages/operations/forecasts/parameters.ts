import type { Tx } from '@almanac/database/client'
import { learnFromSamples } from '@almanac/forecast/fit/learn-from-samples'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { asCurrent, tradePriors } from '@almanac/forecast/priors/trade-priors'
import { type NewSample, newSamples } from './new-samples.ts'

const PRIORS = tradePriors()

export type UsedParameters = {
  /** Null: the firm's records have not been fitted yet, so the trade's first guesses stand in. */
  fitId: string | null
  parameters: ForecastParameters
  /** What was graded since the fit, and is in the parameters. */
  samples: NewSample[]
}

/** The parameters of one fit, with what samples graded since say by `asOfDay`; of none, the trade's first guesses. */
export async function parametersOfFit(tx: Tx, companyId: string, fitId: string | null, asOfDay: string): Promise<UsedParameters> {
  if (fitId === null) return { fitId, parameters: PRIORS, samples: [] }
  const fit = await tx.forecastFit.findUniqueOrThrow({ where: { companyId_id: { companyId, id: fitId } }, select: { parameters: true } })
  const samples = await newSamples(tx, companyId, fitId)
  const records = samples.map((sample) => sample.record)
  return { fitId, parameters: learnFromSamples(asCurrent(fit.parameters as unknown as ForecastParameters), records, asOfDay), samples }
}

/** The parameters of what is shown at present: the fit of the last whole run, and no fit whose run is still under way. */
export async function parametersOf(tx: Tx, companyId: string, asOfDay: string): Promise<UsedParameters> {
  const shown = await tx.forecastFit.findFirst({
    where: { companyId, shownAt: { not: null } },
    orderBy: [{ shownAt: 'desc' }, { finishedAt: 'desc' }, { id: 'desc' }],
    select: { id: true },
  })
  return parametersOfFit(tx, companyId, shown?.id ?? null, asOfDay)
}
