import type { Tx } from '../client.ts'
import { readPlacedBeds, withWater } from './bed-inputs.ts'

/** A bed, in service or ended, with its water and all that dates what was known of it and when. Days are 'YYYY-MM-DD'. */
export type BedHistory = Awaited<ReturnType<typeof readBedHistories>>[number]

/** Beds of a company after `afterId` in id order, ended ones too, each with the days it was seen and how it ended. Tanks at the workshop are left out. */
async function readBedHistories(tx: Tx, companyId: string, bedIds: string[]) {
  const placed = await readPlacedBeds(tx, companyId, bedIds, 'all')
  const beds = await withWater(tx, companyId, placed)
  const endings = await tx.visit.findMany({
    where: { companyId, id: { in: placed.flatMap((bed) => bed.endedVisitId ?? []) } },
    select: { id: true, job: { select: { kind: true } } },
  })
  const kindOf = new Map(endings.map((visit) => [visit.id, visit.job.kind]))
  return beds.map((bed) => ({
    ...bed,
    /** Kind of the job on which it came out, where a visit is on record. */
    endedOnJob: bed.endedVisitId === null ? null : (kindOf.get(bed.endedVisitId) ?? null),
  }))
}

/** Ended beds with an inspection recorded after `afterId`, as ids of version 7 are in order of time. */
export async function readSampledBeds(tx: Tx, companyId: string, afterId: string): Promise<BedHistory[]> {
  const found = await tx.inspection.findMany({ where: { companyId, id: { gt: afterId } }, select: { bedId: true }, distinct: ['bedId'] })
  if (found.length === 0) return []
  const ended = await tx.bed.findMany({
    where: { companyId, id: { in: found.map((one) => one.bedId) }, archivedAt: null, endedLatest: { not: null } },
    select: { id: true },
  })
  return readBedHistories(
    tx,
    companyId,
    ended.map((bed) => bed.id),
  )
}

/** Every bed's history, page by page in id order. */
export async function readBedHistoryPage(
  tx: Tx,
  companyId: string,
  afterId: string | null,
  limit: number,
): Promise<{ beds: BedHistory[]; lastId: string | null }> {
  const ids = await tx.bed.findMany({
    where: { companyId, archivedAt: null, ...(afterId ? { id: { gt: afterId } } : {}) },
    select: { id: true },
    orderBy: { id: 'asc' },
    take: limit,
  })
  const beds = await readBedHistories(
    tx,
    companyId,
    ids.map((one) => one.id),
  )
  return { beds, lastId: ids.length < limit ? null : (ids.at(-1)?.id ?? null) }
}
