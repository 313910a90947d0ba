import type { GuideMeasure } from '@almanac/records/guide-measure'
import type { OwnerVerdict } from '@almanac/records/owner-verdict'
import { inCompany, type Scope } from '../in-company.ts'

/** Whether an owner may rebed a bed alone, as it was decided; the last first. */
export async function readDecisions(scope: Pick<Scope, 'companyId'>, bedId: string, nameOf: (personId: string) => string | null) {
  return inCompany(scope, async (tx) => {
    const found = await tx.ownerDecision.findMany({
      where: { companyId: scope.companyId, bedId },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: SHOWN,
    })
    return found.map(({ id, at, personId, verdict, reasons, law }) => ({
      ...{ id, at: at.toISOString(), by: nameOf(personId), reasons, law },
      verdict: verdict as OwnerVerdict,
    }))
  })
}

/** How many links of a site are shown; older ones stay on record. */
const SHOWN = 5

/** The links by which owners measured at a site, the latest first. Whether one still works is for the reader to say. */
export async function readGuides(scope: Pick<Scope, 'companyId'>, siteId: string) {
  return inCompany(scope, async (tx) => {
    const found = await tx.ownerGuide.findMany({
      where: { companyId: scope.companyId, softener: { siteId, archivedAt: null } },
      include: { softener: { select: { label: true } }, entries: { orderBy: { at: 'asc' } } },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      take: SHOWN,
    })
    return found.map((one) => ({
      ...{ id: one.id, version: one.version, softenerLabel: one.softener.label },
      ...{ createdAt: one.createdAt.toISOString(), linkUntil: one.linkUntil.toISOString(), withdrawn: one.withdrawnAt !== null },
      entries: one.entries.map((entry) => ({
        measure: entry.measure as GuideMeasure,
        valueIn: entry.valueIn,
        at: entry.at.toISOString(),
      })),
    }))
  })
}
