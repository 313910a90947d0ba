import type { SiteWater, TestRow } from '@almanac/contract/water'
import { notFound } from '@almanac/runtime/errors'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'

/** A site's softeners and water tests, newest first. */
export async function readSiteWater(scope: Pick<Scope, 'companyId'>, siteId: string): Promise<SiteWater> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const site = await tx.site.findFirst({
      where: { companyId, id: siteId, archivedAt: null },
      select: {
        id: true,
        label: true,
        softeners: { where: { archivedAt: null }, select: { id: true, label: true }, orderBy: { label: 'asc' } },
        waterTests: { where: { withdrawnAt: null }, orderBy: [{ day: 'desc' }, { id: 'desc' }], take: 200 },
      },
    })
    if (!site) throw notFound('site')
    return {
      siteId: site.id,
      siteLabel: site.label,
      softeners: site.softeners,
      tests: site.waterTests.map((test) => ({
        id: test.id,
        version: test.version,
        day: dayOf(test.day),
        point: test.point as TestRow['point'],
        hardnessGpg: test.hardnessGpg,
        freeChlorineMgL: test.freeChlorineMgL,
        totalChlorineMgL: test.totalChlorineMgL,
        ironMgL: test.ironMgL,
        manganeseMgL: test.manganeseMgL,
        ph: test.ph,
        entered: test.entered as TestRow['entered'],
        source: test.source,
      })),
    }
  })
}
