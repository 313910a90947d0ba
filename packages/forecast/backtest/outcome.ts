import { type IsoDay, parseDay } from '@almanac/units/calendar/day-number'
import type { BedRecord } from '../fit/bed-record.ts'

/** What later records say of a bed in service on an origin day: failed within (after, by], or last known working on `after` (by Infinity). Day numbers. */
export interface Outcome {
  readonly after: number
  readonly by: number
}

/** The outcome by all that is on record; removal and call-backs end the watching, not the life. */
export function outcomeOf(record: BedRecord, origin: number): Outcome {
  let after = Number.NEGATIVE_INFINITY
  for (const day of [record.firstSeenDay, record.lastSeenDay, record.beginning.latestDay, ...(record.visitDays ?? [])]) {
    if (day !== null) after = Math.max(after, day2number(day))
  }
  const { end } = record
  if (end === null) return { after: Math.max(after, origin), by: Number.POSITIVE_INFINITY }
  const earliest = day2number(end.earliestDay)
  if (end.cause !== 'failed') return { after: Math.max(earliest, origin), by: Number.POSITIVE_INFINITY }
  return { after: earliest, by: day2number(end.latestDay) }
}

function day2number(day: IsoDay): number {
  return parseDay(day) ?? Number.NEGATIVE_INFINITY
}

/** Chance that it had failed by `day`, as far as the records tell: 0, 1, or the share of the interval that lies before; null where watching ended earlier. */
export function failedBy({ after, by }: Outcome, day: number): number | null {
  if (by <= day) return 1
  if (after >= day) return 0
  return by === Number.POSITIVE_INFINITY ? null : (day - after) / (by - after)
}
