import { type IsoDay, parseDay } from '@almanac/units/calendar/day-number'
import type { BedRecord } from '../fit/bed-record.ts'
import { CALLED_AFTER_DAYS, CALLED_WITHIN_DAYS } from '../fit/record-ways.ts'

/** What later records say of a bed in service on an origin day: failed within (after, by], or last known working on `after` (by Infinity). Day numbers. */
export interface Outcome {
  readonly after: number
  readonly by: number
}

/**
 * The outcome by all that is on record on `asOf`; removal and call-backs end the watching, not the life. A customer's bed in service is taken to work while nobody called:
 * counting it up to the last visit alone would make failures, which are called for, look more common than they are.
 */
export function outcomeOf(record: BedRecord, origin: number, asOf: number): Outcome {
  let after = Number.NEGATIVE_INFINITY
  for (const day of [record.firstSeenDay, record.lastSeenDay, record.beginning.latestDay, ...(record.visitDays ?? [])]) {
    if (day !== null) after = Math.max(after, day2number(day))
  }
  const { end } = record
  if (end === null) {
    if (record.customerCalls === true) after = Math.max(after, asOf - CALLED_AFTER_DAYS)
    return { after: Math.max(after, origin), by: Number.POSITIVE_INFINITY }
  }
  const earliest = day2number(end.earliestDay)
  // A removal for a reason nobody wrote down counts as a failure here: most are, and a score needs one or the other.
  if (end.cause !== 'failed' && end.cause !== 'unknown') return { after: Math.max(earliest, origin), by: Number.POSITIVE_INFINITY }
  const by = day2number(end.latestDay)
  if (record.customerCalls !== true) return { after: earliest, by }
  const outFrom = end.outFromDay === null || end.outFromDay === undefined ? by : day2number(end.outFromDay)
  return { after: Math.max(earliest, Math.min(outFrom - CALLED_WITHIN_DAYS, by - 1)), by }
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
