import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { readSampledBeds } from '@almanac/database/read/bed-records'
import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import { bedRecord } from './bed-record.ts'

export type NewSample = { bedId: string; waterSupplyId: string; record: BedRecord }

/**
 * Beds taken out whose sample was graded after a fit was begun: what the fit does not know yet. A bed that had failed counts by its sample alone, since its life is the
 * next fit's to learn from; one that ended before the fit's day is in the fit already.
 */
export async function newSamples(tx: Tx, companyId: string, fitId: string): Promise<NewSample[]> {
  const beds = await readSampledBeds(tx, companyId, fitId)
  if (beds.length === 0) return []
  const fit = await tx.forecastFit.findUniqueOrThrow({ where: { companyId_id: { companyId, id: fitId } }, select: { asOfDay: true } })
  return beds.flatMap((bed) => {
    const record = bedRecord(bed)
    if (record === null || bed.waterSupplyId === null) return []
    const failed = record.end?.cause === 'failed'
    if (failed && (bed.endedLatest ?? '') < dayOf(fit.asOfDay)) return []
    return [{ bedId: bed.id, waterSupplyId: bed.waterSupplyId, record: failed ? { ...record, end: null } : record }]
  })
}
