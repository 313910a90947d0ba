import type { BacktestResult, TrackRecord } from '@almanac/contract/forecasts'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { readShownFit } from './shown-fit.ts'

/** The misses with the names of their sites; one whose bed is archived since is left out. */
async function named(tx: Tx, companyId: string, worst: BacktestResult['worst']) {
  const beds = await tx.bed.findMany({
    where: { companyId, id: { in: worst.map((one) => one.bedId) }, archivedAt: null },
    select: { id: true, endedLatest: true, tank: { select: { softener: { select: { site: { select: { label: true } } } } } } },
  })
  const byId = new Map(beds.map((bed) => [bed.id, bed]))
  return worst.flatMap((miss) => {
    const bed = byId.get(miss.bedId)
    return bed ? [{ ...miss, siteLabel: bed.tank.softener?.site.label ?? null, endedLatest: dayOf(bed.endedLatest) }] : []
  })
}

/** A stored look back with what the first of them did not keep: left empty, or worked out from their scores. */
function whole(result: BacktestResult): BacktestResult {
  const own = result.scores.find((one) => one.method === 'forecast')?.integratedBrier ?? Number.NaN
  const others = result.scores.filter((one) => one.method !== 'forecast')
  const skill = others.map(({ method, integratedBrier }) => ({ method, percent: 100 * (1 - own / integratedBrier) }))
  return { ...{ skill, coverageStandardError: null, counts: [], reliability: [], notes: [] }, ...result }
}

/** Past years of the last look back: what was expected in each, and what came. */
export async function readPastYears(scope: Pick<Scope, 'companyId'>): Promise<BacktestResult['counts']> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const last = await tx.forecastBacktest.findFirst({
      where: { companyId },
      orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }],
      select: { result: true },
    })
    return (last?.result as BacktestResult | null | undefined)?.counts ?? []
  })
}

/** The last look back at past forecasts, and the fit in use. */
export async function readTrackRecord(scope: Pick<Scope, 'companyId'>): Promise<Omit<TrackRecord, 'widenedBy'>> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const fit = await readShownFit(tx, companyId)
    const last = await tx.forecastBacktest.findFirst({ where: { companyId }, orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }] })
    if (!last) return { fit, checked: null }
    const result = last.result as BacktestResult | null
    return {
      fit,
      checked: {
        asOfDay: dayOf(last.asOfDay),
        finishedAt: last.finishedAt.toISOString(),
        origins: last.origins as string[],
        refusal: last.refusal,
        result: result && { ...whole(result), worst: await named(tx, companyId, result.worst) },
      },
    }
  })
}
