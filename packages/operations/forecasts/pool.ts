import { createHash } from 'node:crypto'
import { inCompany } from '@almanac/database/in-company'
import { readPooledFits } from '@almanac/database/read/pooled-fits'
import type { ForecastParameters, LifeModel } from '@almanac/forecast/priors/forecast-parameters'
import { asCurrent, tradePriors } from '@almanac/forecast/priors/trade-priors'

/** The figures of a fit that other firms may start from: means and covariances of its models. */
export type SharedFigures = Pick<ForecastParameters, 'family' | 'logMean' | 'logCovariance'> & { alternatives: LifeModel[] }

/** Null: the firm does not learn together with others, so it takes nothing and gives nothing. */
export type Pool = { others: ForecastParameters[]; hash: string } | null

/** What is handed on of a fit: no supply, no source, no version, no day. */
export function sharedFigures({ family, logMean, logCovariance, alternatives = [] }: ForecastParameters): SharedFigures {
  return { family, logMean, logCovariance, alternatives: alternatives.map(({ supplies: _supplies, ...model }) => model) }
}

/** The figures of the other firms that learn together, if this one does. */
export async function readPool(companyId: string): Promise<Pool> {
  const { optedIn, others } = await inCompany({ companyId }, (tx) => readPooledFits(tx, companyId))
  if (!optedIn) return null
  const hash = createHash('sha256').update(JSON.stringify(others)).digest('hex').slice(0, 16)
  return { others: (others as SharedFigures[]).map((one) => ({ ...tradePriors(), ...asCurrent(one), version: 'shared' })), hash }
}
