import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

/** Everything the record says of a bed and its water; the forecast operation turns it into the model's input. Days are 'YYYY-MM-DD'. */
export type BedFacts = Awaited<ReturnType<typeof readBedFacts>>[number]

type PlacedBed = {
  id: string
  resinKind: string
  volumeFt3: number | null
  beganEarliest: string | null
  beganLatest: string | null
  lastSeenDay: string | null
  softenerId: string
  peopleServed: number | null
  siteId: string
  waterSupplyId: string | null
}

/** Beds in service at a site, among `bedIds`; a bed in a tank at the workshop has no water and is left out. */
export async function readBedFacts(tx: Tx, companyId: string, bedIds: string[]) {
  // Joined by hand: each step is a look-up by key, whatever the tables' statistics say right after an import.
  const placed = await tx.$queryRaw<PlacedBed[]>`
    select b.id, b.resin_kind as "resinKind", b.volume_ft3 as "volumeFt3", b.began_earliest::text as "beganEarliest",
      b.began_latest::text as "beganLatest", b.last_seen_day::text as "lastSeenDay", o.id as "softenerId", o.people_served as "peopleServed",
      s.id as "siteId", s.water_supply_id as "waterSupplyId"
    from unnest(${bedIds}::uuid[]) as wanted (id)
    join bed b on b.company_id = ${companyId}::uuid and b.id = wanted.id and b.ended_latest is null and b.archived_at is null
    join tank t on t.company_id = b.company_id and t.id = b.tank_id
    join softener o on o.company_id = t.company_id and o.id = t.softener_id and o.archived_at is null
    join site s on s.company_id = o.company_id and s.id = o.site_id and s.archived_at is null`
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
  const treatments = await tx.preTreatment.findMany({
    where: { companyId, softenerId: { in: placed.map((bed) => bed.softenerId) }, archivedAt: null },
    select: { softenerId: true, kind: true, fromDay: true, toDay: true },
  })
  const testsOf = Map.groupBy(tests, (test) => test.siteId)
  const periodsOf = Map.groupBy(periods, (period) => period.waterSupplyId)
  const treatmentsOf = Map.groupBy(treatments, (treatment) => treatment.softenerId)
  return placed.map(({ softenerId, ...bed }) => ({
    ...bed,
    preTreatments: (treatmentsOf.get(softenerId) ?? []).map((one) => ({
      kind: one.kind,
      fromDay: dayOf(one.fromDay),
      toDay: dayOf(one.toDay),
    })),
    tests: (testsOf.get(bed.siteId) ?? [])
      .filter((test) => test.softenerId === null || test.softenerId === softenerId)
      .map((test) => ({ ...test, day: dayOf(test.day) })),
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
