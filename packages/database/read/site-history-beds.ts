import type { BeadCondition } from '@almanac/records/bead-condition'
import type { EndCause } from '@almanac/records/end-cause'
import type { RecordedResinKind } from '@almanac/records/resin-kind'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { tankWords } from './site-lines.ts'

/** Beds that began and ended in the site's tanks, what was seen of them, and forecasts that moved. A bed of unknown age has no day to stand at. */
export async function bedHappenings(tx: Tx, companyId: string, siteId: string, dayIn: (instant: Date) => string, most: number) {
  const beds = await tx.bed.findMany({
    where: { companyId, archivedAt: null, tank: { softener: { siteId } } },
    include: {
      tank: true,
      inspections: { orderBy: [{ day: 'desc' }, { id: 'desc' }], take: most },
      changes: { orderBy: [{ at: 'desc' }, { id: 'desc' }], take: 20 },
    },
    orderBy: { id: 'desc' },
    take: most,
  })
  return beds.flatMap((bed) => {
    const which = { bedId: bed.id, tank: tankWords(bed.tank) }
    const beganDay = dayOf(bed.beganLatest ?? bed.beganEarliest)
    const began =
      beganDay === null
        ? []
        : [
            {
              type: 'bed-began' as const,
              key: `${bed.id}-a`,
              day: beganDay,
              ...which,
              earliestDay: dayOf(bed.beganEarliest),
              asWritten: bed.beganAsWritten,
              resinKind: bed.resinKind as RecordedResinKind,
              volumeFt3: bed.volumeFt3,
            },
          ]
    const ended =
      bed.endedLatest === null
        ? []
        : [
            {
              type: 'bed-ended' as const,
              key: `${bed.id}-0`,
              day: dayOf(bed.endedLatest),
              ...which,
              earliestDay: dayOf(bed.endedEarliest),
              cause: (bed.endCause ?? 'unknown') as EndCause,
            },
          ]
    const inspections = bed.inspections.map((one) => ({
      type: 'inspection' as const,
      key: one.id,
      day: dayOf(one.day),
      ...which,
      beadCondition: one.beadCondition as BeadCondition | null,
      capacityShare: one.capacityShare,
      moistureShare: one.moistureShare,
      pressureDropPsi: one.pressureDropPsi,
      notes: one.notes,
    }))
    const changes = bed.changes.map((one) => ({
      type: 'forecast' as const,
      key: one.id,
      day: dayIn(one.at),
      ...which,
      fromDue50: dayOf(one.fromDue50),
      toDue50: dayOf(one.toDue50),
      cause: one.cause,
    }))
    return [...began, ...ended, ...inspections, ...changes]
  })
}
