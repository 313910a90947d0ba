import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

/** Everything the record says of a bed and its water; the forecast operation turns it into the model's input. Days are 'YYYY-MM-DD'. */
export type BedFacts = Awaited<ReturnType<typeof readBedFacts>>[number]

const BED = {
  id: true,
  resinKind: true,
  volumeFt3: true,
  beganEarliest: true,
  beganLatest: true,
  lastSeenDay: true,
  tank: {
    select: {
      softener: {
        select: {
          id: true,
          peopleServed: true,
          preTreatments: { where: { archivedAt: null }, select: { kind: true, fromDay: true, toDay: true } },
          site: { select: { id: true, waterSupplyId: true, archivedAt: true } },
        },
      },
    },
  },
} as const

/** Beds in service at a site, among `bedIds`; a bed in a tank at the workshop has no water and is left out. */
export async function readBedFacts(tx: Tx, companyId: string, bedIds: string[]) {
  const beds = await tx.bed.findMany({
    where: {
      companyId,
      id: { in: bedIds },
      endedLatest: null,
      archivedAt: null,
      tank: { softener: { archivedAt: null, site: { archivedAt: null } } },
    },
    select: BED,
  })
  const placed = beds.flatMap((bed) => (bed.tank.softener ? [{ ...bed, softener: bed.tank.softener }] : []))
  const siteIds = [...new Set(placed.map((bed) => bed.softener.site.id))]
  const supplyIds = [...new Set(placed.flatMap((bed) => bed.softener.site.waterSupplyId ?? []))]
  const tests = await tx.waterTest.findMany({
    where: { companyId, siteId: { in: siteIds }, withdrawnAt: null },
    select: {
      siteId: true,
      softenerId: true,
      day: true,
      point: true,
      freeChlorineMgL: true,
      totalChlorineMgL: true,
      hardnessGpg: true,
      ironMgL: true,
      temperatureC: true,
    },
    orderBy: { day: 'asc' },
  })
  const periods = await tx.supplyPeriod.findMany({
    where: { companyId, waterSupplyId: { in: supplyIds }, withdrawnAt: null },
    select: {
      waterSupplyId: true,
      fromDay: true,
      disinfectant: true,
      residualMgL: true,
      hardnessGpg: true,
      ironMgL: true,
      temperatureC: true,
    },
    orderBy: { fromDay: { sort: 'asc', nulls: 'first' } },
  })
  const testsOf = Map.groupBy(tests, (test) => test.siteId)
  const periodsOf = Map.groupBy(periods, (period) => period.waterSupplyId)
  return placed.map(({ softener, ...bed }) => ({
    id: bed.id,
    siteId: softener.site.id,
    waterSupplyId: softener.site.waterSupplyId,
    resinKind: bed.resinKind,
    volumeFt3: bed.volumeFt3,
    peopleServed: softener.peopleServed,
    beganEarliest: dayOf(bed.beganEarliest),
    beganLatest: dayOf(bed.beganLatest),
    lastSeenDay: dayOf(bed.lastSeenDay),
    preTreatments: softener.preTreatments.map((one) => ({ kind: one.kind, fromDay: dayOf(one.fromDay), toDay: dayOf(one.toDay) })),
    tests: (testsOf.get(softener.site.id) ?? [])
      .filter((test) => test.softenerId === null || test.softenerId === softener.id)
      .map((test) => ({ ...test, day: dayOf(test.day) })),
    periods: (periodsOf.get(softener.site.waterSupplyId ?? '') ?? []).map((period) => ({ ...period, fromDay: dayOf(period.fromDay) })),
  }))
}

/** Ids of beds in service after `afterId`, in id order; for one supply or batch when given. */
export async function readBedIds(
  tx: Tx,
  companyId: string,
  among: { waterSupplyId?: string; batchId?: string },
  afterId: string | null,
  limit: number,
): Promise<string[]> {
  const rows = await tx.bed.findMany({
    where: {
      companyId,
      endedLatest: null,
      archivedAt: null,
      ...(afterId ? { id: { gt: afterId } } : {}),
      ...(among.batchId ? { batchId: among.batchId } : {}),
      tank: {
        softener: { archivedAt: null, site: { archivedAt: null, ...(among.waterSupplyId ? { waterSupplyId: among.waterSupplyId } : {}) } },
      },
    },
    select: { id: true },
    orderBy: { id: 'asc' },
    take: limit,
  })
  return rows.map((row) => row.id)
}
