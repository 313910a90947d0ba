import type { ShownFit } from '@almanac/contract/forecasts'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

/** The fit of the last whole run, as screens name it; null before the first. */
export async function readShownFit(tx: Tx, companyId: string): Promise<ShownFit | null> {
  const fit = await tx.forecastFit.findFirst({
    where: { companyId, shownAt: { not: null } },
    orderBy: [{ shownAt: 'desc' }, { finishedAt: 'desc' }, { id: 'desc' }],
    omit: { parameters: true },
  })
  if (!fit?.shownAt) return null
  const { learned } = fit.summary as { learned?: Record<string, number> }
  return {
    version: fit.version,
    asOfDay: dayOf(fit.asOfDay),
    shownAt: fit.shownAt.toISOString(),
    records: fit.records,
    failures: fit.failures,
    leftOut: fit.leftOut as ShownFit['leftOut'],
    learned: learned ?? {},
    fellBackBecause: fit.fellBackBecause,
  }
}
