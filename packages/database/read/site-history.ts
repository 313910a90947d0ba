import type { RecordedDisinfectant } from '@almanac/records/disinfectant'
import type { MeasuringPoint } from '@almanac/records/measuring-point'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { bedHappenings } from './site-history-beds.ts'
import { visitHappenings } from './site-history-visits.ts'

/** The most a history shows of each kind; a home has a few dozen in all. */
const MOST = 200

/**
 * Everything dated that happened at a site, newest first: beds, inspections, forecasts that moved, visits, jobs that ended without one, water tests, changes
 * of its supply and of who holds it. `timeZone` turns instants into the company's days.
 */
export async function readSiteHistory(scope: Pick<Scope, 'companyId'>, siteId: string, dayIn: (instant: Date) => string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const site = await tx.site.findFirst({
      where: { companyId, id: siteId, archivedAt: null },
      select: { waterSupply: { select: { id: true, name: true } } },
    })
    if (!site) throw notFound('site')
    const beds = await bedHappenings(tx, companyId, siteId, dayIn, MOST)
    const visits = await visitHappenings(tx, companyId, siteId, MOST)
    const tests = await testHappenings(tx, companyId, siteId)
    const tenures = await tenureHappenings(tx, companyId, siteId)
    const supply = site.waterSupply ? await supplyHappenings(tx, companyId, site.waterSupply) : []
    const all = [...beds, ...visits, ...tests, ...tenures, ...supply]
    all.sort((a, b) => (a.day === b.day ? (a.key < b.key ? 1 : -1) : a.day < b.day ? 1 : -1))
    return { happenings: all.slice(0, MOST * 2), more: all.length > MOST * 2 || [beds, visits, tests].some((some) => some.length >= MOST) }
  })
}

async function testHappenings(tx: Tx, companyId: string, siteId: string) {
  const tests = await tx.waterTest.findMany({
    where: { companyId, siteId, withdrawnAt: null },
    orderBy: [{ day: 'desc' }, { id: 'desc' }],
    take: MOST,
  })
  return tests.map((test) => ({
    type: 'water-test' as const,
    key: test.id,
    day: dayOf(test.day),
    point: test.point as MeasuringPoint,
    hardnessGpg: test.hardnessGpg,
    freeChlorineMgL: test.freeChlorineMgL,
    totalChlorineMgL: test.totalChlorineMgL,
    ironMgL: test.ironMgL,
    source: test.source,
  }))
}

async function tenureHappenings(tx: Tx, companyId: string, siteId: string) {
  const tenures = await tx.tenure.findMany({ where: { companyId, siteId }, include: { customer: { select: { name: true } } } })
  return tenures.flatMap((tenure) => {
    const customerName = tenure.customer.name
    const began = tenure.fromDay
      ? [{ type: 'tenure' as const, key: `${tenure.id}-from`, day: dayOf(tenure.fromDay), customerName, began: true }]
      : []
    const ended = tenure.toDay
      ? [{ type: 'tenure' as const, key: `${tenure.id}-to`, day: dayOf(tenure.toDay), customerName, began: false }]
      : []
    return [...began, ...ended]
  })
}

async function supplyHappenings(tx: Tx, companyId: string, supply: { id: string; name: string }) {
  const periods = await tx.supplyPeriod.findMany({
    where: { companyId, waterSupplyId: supply.id, withdrawnAt: null, fromDay: { not: null } },
    orderBy: { fromDay: 'desc' },
    take: MOST,
  })
  return periods.flatMap((period) =>
    period.fromDay
      ? [
          {
            type: 'supply' as const,
            key: period.id,
            day: dayOf(period.fromDay),
            supply: supply.name,
            disinfectant: period.disinfectant as RecordedDisinfectant,
            residualMgL: period.residualMgL,
            source: period.source,
          },
        ]
      : [],
  )
}
