import type { VisitPage } from '@almanac/contract/visits'
import type { SupplyKind } from '@almanac/records/supply-kind'
import { notFound } from '@almanac/runtime/errors'
import { inCompany, type Scope } from '../in-company.ts'
import { WORK_PARTS, workLine } from './today.ts'

/** One visit with all that is needed to do it: where, whom to ring, the tank, the water, what can be used. */
export async function readVisit(scope: Pick<Scope, 'companyId'>, visitId: string): Promise<VisitPage> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const visit = await tx.visit.findUnique({ where: { companyId_id: { companyId, id: visitId } }, include: WORK_PARTS })
    // A time that is only offered is no visit yet.
    if (!visit || visit.state === 'offered') throw notFound('visit')
    const { job } = visit
    const holder = await tx.tenure.findFirst({ where: { companyId, siteId: job.siteId, toDay: null }, select: { customerId: true } })
    const contacts = await tx.contact.findMany({
      where: {
        companyId,
        archivedAt: null,
        OR: [{ siteId: job.siteId }, ...(holder ? [{ customerId: holder.customerId, siteId: null }] : [])],
      },
      select: { name: true, role: true, phone: true },
      orderBy: { id: 'asc' },
    })
    const valve = job.softenerId
      ? await tx.valve.findFirst({ where: { companyId, softenerId: job.softenerId, archivedAt: null }, orderBy: { id: 'asc' } })
      : null
    const supply = job.site.waterSupplyId
      ? await tx.waterSupply.findFirst({
          where: { companyId, id: job.site.waterSupplyId },
          include: { periods: { where: { withdrawnAt: null }, orderBy: { fromDay: { sort: 'desc', nulls: 'last' } }, take: 1 } },
        })
      : null
    const stock = await tx.stockItem.findMany({
      where: { companyId, archivedAt: null },
      select: { id: true, name: true, kind: true, unit: true, resinKind: true, bagFt3: true },
      orderBy: [{ kind: 'asc' }, { name: 'asc' }],
      take: 200,
    })
    const period = supply?.periods[0]
    return {
      ...workLine(visit),
      version: visit.version,
      jobId: job.id,
      siteId: job.siteId,
      accessNotes: job.site.accessNotes,
      jobNotes: job.notes,
      contacts,
      softenerLabel: job.softener?.label ?? null,
      backwashGpm: valve?.backwashGpm ?? null,
      tubeOdIn: valve?.tubeOdIn ?? null,
      valveCardId: valve?.cardId ?? null,
      tubeCutIn: job.bed?.tubeCutIn ?? null,
      waterSource: (supply?.kind as SupplyKind | undefined) ?? null,
      waterTemperatureC: period?.temperatureC ?? null,
      ironMgL: period?.ironMgL ?? null,
      stock,
      outcome: visit.outcome as VisitPage['outcome'],
      closedAt: visit.closedAt?.toISOString() ?? null,
    }
  })
}
