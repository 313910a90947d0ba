import type { SupplyKind } from '@almanac/records/supply-kind'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

/** Everything the record says of a bed and its water; the forecast operation turns it into the model's input. Days are 'YYYY-MM-DD'. */
export type BedInputs = Awaited<ReturnType<typeof readBedInputs>>[number]

const BED = {
  id: true,
  tankId: true,
  resinKind: true,
  volumeFt3: true,
  beganEarliest: true,
  beganLatest: true,
  firstSeenDay: true,
  lastSeenDay: true,
  endedEarliest: true,
  endedLatest: true,
  endCause: true,
  beganVisitId: true,
  endedVisitId: true,
  batchId: true,
} as const

/**
 * Beds with where they stand. Four look-ups by key and not one join: right after an import the tables have no statistics, and a join then walks
 * a company's whole table for each bed.
 */
export async function readPlacedBeds(tx: Tx, companyId: string, bedIds: string[], among: 'in service' | 'all' = 'in service') {
  const inService = among === 'in service' ? { endedLatest: null } : {}
  // What ended at a place that is no longer looked after still says how long beds last; what was entered twice would say it twice.
  const there = among === 'in service' ? { archivedAt: null } : { OR: [{ archiveReason: null }, { archiveReason: { not: 'twice' } }] }
  // In order: what is learned from records is known by their hash, and sums come out to the same last figure.
  const where = { companyId, id: { in: bedIds }, ...inService, archivedAt: null }
  const beds = await tx.bed.findMany({ where, select: BED, orderBy: { id: 'asc' } })
  const tanks = await tx.tank.findMany({
    where: { companyId, id: { in: beds.map((bed) => bed.tankId) }, softenerId: { not: null } },
    select: { id: true, softenerId: true },
  })
  const softeners = await tx.softener.findMany({
    where: { companyId, id: { in: tanks.flatMap((tank) => tank.softenerId ?? []) }, ...there },
    select: { id: true, siteId: true, peopleServed: true, archivedAt: true },
  })
  const sites = await tx.site.findMany({
    where: { companyId, id: { in: softeners.map((softener) => softener.siteId) }, ...there },
    select: { id: true, waterSupplyId: true, archivedAt: true },
  })
  const softenerOfTank = new Map(tanks.map((tank) => [tank.id, tank.softenerId]))
  const softenerById = new Map(softeners.map((softener) => [softener.id, softener]))
  const siteById = new Map(sites.map((site) => [site.id, site]))
  return beds.flatMap((bed) => {
    const softener = softenerById.get(softenerOfTank.get(bed.tankId) ?? '')
    const site = softener && siteById.get(softener.siteId)
    if (!softener || !site) return []
    if (bed.endedLatest === null && (softener.archivedAt || site.archivedAt)) return []
    return [
      {
        ...bed,
        beganEarliest: dayOf(bed.beganEarliest),
        beganLatest: dayOf(bed.beganLatest),
        firstSeenDay: dayOf(bed.firstSeenDay),
        lastSeenDay: dayOf(bed.lastSeenDay),
        endedEarliest: dayOf(bed.endedEarliest),
        endedLatest: dayOf(bed.endedLatest),
        softenerId: softener.id,
        peopleServed: softener.peopleServed,
        siteId: site.id,
        waterSupplyId: site.waterSupplyId,
      },
    ]
  })
}

function heardOf(
  call: { hardSinceDay: Date | null; hardSinceLatest: Date | null } | undefined,
): { earliest: string; latest: string } | null {
  const earliest = dayOf(call?.hardSinceDay ?? null)
  return earliest === null ? null : { earliest, latest: dayOf(call?.hardSinceLatest ?? null) ?? earliest }
}

/** Beds in service at a site, among `bedIds`; a bed in a tank at the workshop has no water and is left out. */
export async function readBedInputs(tx: Tx, companyId: string, bedIds: string[]) {
  return withWater(tx, companyId, await readPlacedBeds(tx, companyId, bedIds))
}

/** Work that leaves a softener running: a bed looked after on such a day was working. */
const WORKING_KINDS = ['annual-visit', 'cleaning', 'inspection', 'repair']

/** Placed beds with the water that reached them, what was found at inspections, the days they were seen or came with a list, and the beds before them. */
export async function withWater(tx: Tx, companyId: string, placed: Awaited<ReturnType<typeof readPlacedBeds>>) {
  const siteIds = [...new Set(placed.map((bed) => bed.siteId))]
  const supplyIds = [...new Set(placed.flatMap((bed) => bed.waterSupplyId ?? []))]
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
    orderBy: [{ day: 'asc' }, { id: 'asc' }],
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
    orderBy: [{ fromDay: { sort: 'asc', nulls: 'first' } }, { id: 'asc' }],
  })
  const supplies = await tx.waterSupply.findMany({ where: { companyId, id: { in: supplyIds } }, select: { id: true, kind: true } })
  const treatments = await tx.preTreatment.findMany({
    where: { companyId, softenerId: { in: placed.map((bed) => bed.softenerId) }, archivedAt: null },
    select: { softenerId: true, kind: true, fromDay: true, toDay: true },
    orderBy: { id: 'asc' },
  })
  const inspections = await tx.inspection.findMany({
    where: { companyId, bedId: { in: placed.map((bed) => bed.id) } },
    select: { bedId: true, day: true, capacityShare: true, pressureDropPsi: true, moistureShare: true, beadCondition: true },
    orderBy: [{ day: 'asc' }, { id: 'asc' }],
  })
  const others = await tx.bed.findMany({
    where: { companyId, tankId: { in: [...new Set(placed.map((bed) => bed.tankId))] }, archivedAt: null, endedLatest: { not: null } },
    select: { id: true, tankId: true, endedEarliest: true, endedLatest: true },
    orderBy: { id: 'asc' },
  })
  const jobs = await tx.job.findMany({
    where: {
      companyId,
      bedId: { in: placed.map((bed) => bed.id) },
      kind: { in: WORKING_KINDS },
      state: 'closed',
      closedDay: { not: null },
    },
    select: { bedId: true, closedDay: true },
  })
  const calls = await tx.phoneCall.findMany({
    where: { companyId, bedId: { in: placed.map((bed) => bed.id) }, hardSinceDay: { not: null } },
    select: { bedId: true, hardSinceDay: true, hardSinceLatest: true },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  const batches = await tx.importBatch.findMany({
    where: { companyId, id: { in: [...new Set(placed.flatMap((bed) => bed.batchId ?? []))] }, appliedAt: { not: null } },
    select: { id: true, appliedAt: true },
  })
  const appliedOf = new Map(batches.map((batch) => [batch.id, dayOf(batch.appliedAt)]))
  const endsOf = Map.groupBy(others, (one) => one.tankId)
  const hardOf = new Map(calls.map((call) => [call.bedId, call]))
  const jobsOf = Map.groupBy(jobs, (one) => one.bedId)
  const inspectionsOf = Map.groupBy(inspections, (one) => one.bedId)
  const testsOf = Map.groupBy(tests, (test) => test.siteId)
  const kindOf = new Map(supplies.map((one) => [one.id, one.kind as SupplyKind]))
  const periodsOf = Map.groupBy(periods, (period) => period.waterSupplyId)
  const treatmentsOf = Map.groupBy(treatments, (treatment) => treatment.softenerId)
  return placed.map(({ softenerId, ...bed }) => ({
    ...bed,
    inspections: (inspectionsOf.get(bed.id) ?? []).map(({ bedId: _bed, ...one }) => ({ ...one, day: dayOf(one.day) })),
    preTreatments: (treatmentsOf.get(softenerId) ?? []).map((one) => ({
      kind: one.kind,
      fromDay: dayOf(one.fromDay),
      toDay: dayOf(one.toDay),
    })),
    tests: (testsOf.get(bed.siteId) ?? [])
      .filter((test) => test.softenerId === null || test.softenerId === softenerId)
      .map((test) => ({ ...test, day: dayOf(test.day) })),
    supplyKind: kindOf.get(bed.waterSupplyId ?? '') ?? null,
    /** Between which days other beds of the same tank came out. */
    otherEnds: (endsOf.get(bed.tankId) ?? [])
      .filter((one) => one.id !== bed.id)
      .map((one) => ({ earliest: dayOf(one.endedEarliest), latest: dayOf(one.endedLatest) ?? '' })),
    /** Day of the import that brought it; null where it came otherwise. */
    importedDay: appliedOf.get(bed.batchId ?? '') ?? null,
    /** Between which days its water turned hard, as the customer said last; null where nobody said so. */
    heardHard: heardOf(hardOf.get(bed.id)),
    /** Days of finished work that left it running. */
    workDays: (jobsOf.get(bed.id) ?? []).map((job) => dayOf(job.closedDay) ?? ''),
    periods: (periodsOf.get(bed.waterSupplyId ?? '') ?? []).map((period) => ({ ...period, fromDay: dayOf(period.fromDay) })),
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
  const rows = await tx.$queryRaw<{ id: string }[]>`
    select b.id from bed b
    where b.company_id = ${companyId}::uuid and b.ended_latest is null and b.archived_at is null
      and (${afterId}::uuid is null or b.id > ${afterId}::uuid)
      and (${among.batchId ?? null}::uuid is null or b.batch_id = ${among.batchId ?? null}::uuid)
      and (${among.waterSupplyId ?? null}::uuid is null or exists (
        select from tank t join softener o on o.company_id = t.company_id and o.id = t.softener_id join site s on s.company_id = o.company_id and s.id = o.site_id
        where t.company_id = b.company_id and t.id = b.tank_id and s.water_supply_id = ${among.waterSupplyId ?? null}::uuid))
    order by b.id limit ${limit}`
  return rows.map((row) => row.id)
}
