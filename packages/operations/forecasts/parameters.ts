import type { Tx } from '@almanac/database/client'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'

const PRIORS = tradePriors()

export type UsedParameters = {
  /** Null: the firm's records have not been fitted yet, so the trade's first guesses stand in. */
  fitId: string | null
  parameters: ForecastParameters
}

/** The parameters of one fit; of none, the trade's first guesses. */
export async function parametersOfFit(tx: Tx, companyId: string, fitId: string | null): Promise<UsedParameters> {
  if (fitId === null) return { fitId, parameters: PRIORS }
  const fit = await tx.forecastFit.findUniqueOrThrow({ where: { companyId_id: { companyId, id: fitId } }, select: { parameters: true } })
  return { fitId, parameters: fit.parameters as unknown as ForecastParameters }
}

/** The parameters of what is shown at present: the fit of the last whole run, and no fit whose run is still under way. */
export async function parametersOf(tx: Tx, companyId: string): Promise<UsedParameters> {
  const shown = await tx.forecastFit.findFirst({
    where: { companyId, shownAt: { not: null } },
    orderBy: [{ shownAt: 'desc' }, { finishedAt: 'desc' }, { id: 'desc' }],
    select: { id: true },
  })
  return parametersOfFit(tx, companyId, shown?.id ?? null)
}
