import type { IsoDay } from '@almanac/units/calendar/day-number'
import type { BedRecord } from '../fit/bed-record.ts'

/**
 * A record's water as it was known on a day: changes of the supply after it, and equipment put ahead of the softener after it, are left out; what was taken away later
 * was still there. Tests carry their day and are left out by whoever reads them. Everything else of the record counts as known all along; the track record's page says so.
 */
export function asKnownOn(record: BedRecord, day: IsoDay): BedRecord {
  const { supplyPeriods, preTreatments, tests } = record.water
  const later = ({ fromDay, toDay }: (typeof preTreatments)[number]) => (fromDay ?? '') > day || (toDay ?? '') > day
  if (!supplyPeriods.some(({ fromDay }) => fromDay > day) && !preTreatments.some(later)) return record
  return {
    ...record,
    water: {
      tests,
      supplyPeriods: supplyPeriods.filter(({ fromDay }) => fromDay <= day),
      preTreatments: preTreatments
        .filter(({ fromDay }) => (fromDay ?? '') <= day)
        .map((one) => ((one.toDay ?? '') > day ? { ...one, toDay: null } : one)),
    },
  }
}
