import type { GuideMeasure } from '@almanac/records/guide-measure'
import { inCompany, type Scope } from '../in-company.ts'

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
