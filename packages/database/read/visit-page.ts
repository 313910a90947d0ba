import type { VisitPage } from '@almanac/contract/visits'
import { askedFor } from '@almanac/records/asked-for'
import type { ContactRole } from '@almanac/records/contact-role'
import type { JobKind } from '@almanac/records/job-kind'
import { openMaterialStates } from '@almanac/records/stock'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { TWIN_FACTS, twinOf } from './bed-facts.ts'
import { readBedWater } from './bed-water.ts'
import { readEmptied } from './emptied-tank.ts'
import { softenerSettingsIn } from './softener-settings.ts'
import { WORK_PARTS, workLine } from './today.ts'

const LAST_VISITS = 3
const LAST_TESTS = 6

/** What was done and found at a site before a visit. */
async function readBefore(tx: Tx, companyId: string, visitId: string, siteId: string): Promise<Pick<VisitPage, 'before' | 'tests'>> {
  const visits = await tx.visit.findMany({
    where: { companyId, state: 'closed', id: { not: visitId }, job: { siteId } },
    select: { outcome: true, notes: true, crewDay: { select: { day: true } }, job: { select: { kind: true } } },
    orderBy: [{ startsAt: 'desc' }, { id: 'desc' }],
    take: LAST_VISITS,
  })
  const tests = await tx.waterTest.findMany({
    where: { companyId, siteId, withdrawnAt: null },
    select: { day: true, point: true, hardnessGpg: true },
    orderBy: [{ day: 'desc' }, { id: 'desc' }],
    take: LAST_TESTS,
  })
  return {
    before: visits.map(({ outcome, notes, crewDay, job }) => ({
      ...{ day: dayOf(crewDay.day), kind: job.kind as JobKind, outcome: outcome as VisitPage['outcome'], notes },
    })),
    tests: tests.map((test) => ({ ...test, day: dayOf(test.day), point: test.point as VisitPage['tests'][number]['point'] })),
  }
}

/** One visit with all that is needed to do it: where, whom to ring, the tank, the water, what can be used. */
export async function readVisit(scope: Pick<Scope, 'companyId'> & { personId: string }, visitId: string): Promise<VisitPage> {
  const { companyId, personId } = scope
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
      select: { id: true, name: true, kind: true, unit: true, resinKind: true, bagFt3: true, tubeOdIn: true, onHand: true },
      orderBy: [{ kind: 'asc' }, { name: 'asc' }],
      take: 200,
    })
    const materials = await tx.materialLine.findMany({
      where: { companyId, jobId: job.id, state: { in: [...openMaterialStates] } },
      select: { quantity: true, stockItem: { select: { name: true, unit: true } } },
      orderBy: { id: 'asc' },
    })
    const self = await tx.colleague.findFirst({ where: { companyId, personId, archivedAt: null }, select: { id: true } })
    return {
      ...workLine(visit),
      yours: self && visit.assignments.some((one) => one.colleagueId === self.id),
      ...(await readBefore(tx, companyId, visit.id, job.siteId)),
      version: visit.version,
      jobId: job.id,
      siteId: job.siteId,
      accessNotes: job.site.accessNotes,
      jobNotes: job.notes,
      askedFor: askedFor(job.askedFor),
      contacts: contacts.map((one) => ({ ...one, role: one.role as ContactRole })),
      softenerLabel: job.softener?.label ?? null,
      twin: twinOf(softener, job.bed?.tank.position ?? null),
      emptied: await readEmptied(tx, companyId, job.bedId),
      water: { source, ironMgL, temperatureC },
      settings: job.softenerId ? await softenerSettingsIn(tx, companyId, job.softenerId) : null,
      materials: materials.map(({ stockItem, quantity }) => ({ ...stockItem, quantity })),
      stock,
      outcome: visit.outcome as VisitPage['outcome'],
      closedAt: visit.closedAt?.toISOString() ?? null,
    }
  })
}
