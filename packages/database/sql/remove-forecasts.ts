import type { Tx } from '../client.ts'

/** Takes away the present forecasts of beds that are no longer in service. Their history of changes stays. */
export async function removeForecasts(tx: Tx, companyId: string, bedIds: string[]): Promise<void> {
  if (bedIds.length > 0) await tx.bedForecast.deleteMany({ where: { companyId, bedId: { in: bedIds } } })
}
