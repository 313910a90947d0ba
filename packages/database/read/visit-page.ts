import type { VisitPage } from '@almanac/contract/visits'
import type { ContactRole } from '@almanac/records/contact-role'
import { notFound } from '@almanac/runtime/errors'
import { inCompany, type Scope } from '../in-company.ts'
import { TWIN_FACTS, twinOf } from './bed-facts.ts'
import { readBedWater } from './bed-water.ts'
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
    const { source, ironMgL, temperatureC } = await readBedWater(tx, companyId, {
      ...job.site,
      siteId: job.siteId,
      softenerId: job.softenerId,
    })
    const softener = job.softenerId
      ? await tx.softener.findUnique({ where: { companyId_id: { companyId, id: job.softenerId } }, ...TWIN_FACTS })
      : null
    const stock = await tx.stockItem.findMany({
      where: { companyId, archivedAt: null },
      select: { id: true, name: true, kind: true, unit: true, resinKind: true, bagFt3: true, onHand: true },
      orderBy: [{ kind: 'asc' }, { name: 'asc' }],
      take: 200,
    })
    return {
      ...workLine(visit),
      version: visit.version,
      jobId: job.id,
      siteId: job.siteId,
      accessNotes: job.site.accessNotes,
      jobNotes: job.notes,
      contacts: contacts.map((one) => ({ ...one, role: one.role as ContactRole })),
      softenerLabel: job.softener?.label ?? null,
      twin: twinOf(softener, job.bed?.tank.position ?? null),
      water: { source, ironMgL, temperatureC },
      stock,
      outcome: visit.outcome as VisitPage['outcome'],
      closedAt: visit.closedAt?.toISOString() ?? null,
    }
  })
}
