import { DAYS_PER_YEAR, type IsoDay, parseDay } from '@almanac/units/calendar/day-number'
import { type Refusal, refuse } from '@almanac/units/result'
import { beginningNodes } from '../bed-forecast/beginning-nodes.ts'
import { readInput } from '../bed-forecast/read-input.ts'
import type { BedTraits } from '../exposure/acceleration.ts'
import type { TracedSegment } from '../exposure/water-history.ts'
import type { WeightedNode } from '../numeric/gauss-nodes.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import type { BedRecord } from './bed-record.ts'
import {
  CALLED_AFTER_DAYS,
  CALLS,
  looksPerYear,
  PLAIN,
  type RecordEntry,
  type RecordWay,
  SILENT,
  waysFailed,
  waysInService,
  waysRemoved,
} from './record-ways.ts'

/** What was known of a bed on a day, for a forecast as of that day; null when it was not yet met, had ended, or its dates are none. */
export function lastSeenAsOf(record: BedRecord, asOf: number): { readonly lastSeenDay: IsoDay | null } | null {
  const first = record.firstSeenDay === null ? Number.NEGATIVE_INFINITY : (parseDay(record.firstSeenDay) ?? Number.POSITIVE_INFINITY)
  if (first > asOf || endKnownBy(record, asOf) !== null) return null
  const lastSeenDay = lastKnownWorking(record, null, asOf)
  return lastSeenDay === undefined ? null : { lastSeenDay }
}

/** A record ready for the likelihood, in day numbers. */
export interface ReadRecord {
  readonly ok: true
  readonly beginnings: readonly WeightedNode[]
  /** −Infinity when followed from its beginning. */
  readonly entry: number
  /** Failure within [lower, upper]; upper Infinity: still working at lower. */
  readonly lower: number
  readonly upper: number
  /** How the record can have come about, each of them to be weighed, and how the bed can have come on record; no entry: it was followed from its beginning. */
  readonly ways: readonly RecordWay[]
  readonly entries: readonly RecordEntry[]
  /** Years in which it could have been taken out for another reason; 0 where that is not looked at. */
  readonly yearsAtRisk: number
  readonly traits: BedTraits
  readonly segments: readonly TracedSegment[]
}

/** Failure days closer than this are taken as known: nobody dates the end of a bed to the day. */
const KNOWN_WITHIN_DAYS = 31

/**
 * Turns a record into its likelihood's terms as known on `asOfDay`: what happened later is not looked at, so that a fit for a past day cannot learn from what
 * came after. Workmanship and contradictory records are refused with the reason.
 */
export function readRecord(record: BedRecord, asOfDay: IsoDay, parameters: ForecastParameters): ReadRecord | Refusal {
  const asOf = parseDay(asOfDay)
  if (asOf === null) return refuse('The date of this calculation isn’t real.')
  const first = record.firstSeenDay === null ? null : parseDay(record.firstSeenDay)
  if (record.firstSeenDay !== null && first === null) return refuse('The first-seen date isn’t real.')
  if (first !== null && first > asOf) return refuse('Your company hadn’t seen the bed by then.')
  const end = endKnownBy(record, asOf)
  if (end === undefined) return refuse('The end of the bed isn’t a real date.')
  if (end !== null && record.end?.cause === 'workmanship') return refuse('An early return for workmanship says nothing about resin.')
  const seen = lastKnownWorking(record, end, asOf)
  if (seen === undefined) return refuse('The last-seen date isn’t real.')
  const bed = readInput({ ...record, asOfDay, lastSeenDay: seen }, parameters)
  // Reasons are counted: one that named the days of its record would be a reason of its own for each.
  if (!bed.ok) return refuse('Its record contradicts itself, or holds a value that cannot be right.')
  const failed = end !== null && (record.end?.cause === 'failed' || record.end?.cause === 'unknown')
  const upper = failed ? end.latest : Number.POSITIVE_INFINITY
  const known = upper - bed.lastSeen <= KNOWN_WITHIN_DAYS
  const day = known ? (bed.lastSeen + upper) / 2 : bed.lastSeen
  const lower = Math.max(day, bed.latest + 1)
  if (first !== null && first > lower) return refuse('It was first seen after its end.')
  const plain: RecordWay = { sort: PLAIN, lower, upper: known ? lower : Math.max(upper, lower), logFactor: 0 }
  const met: RecordEntry[] = first === null ? [] : [{ sort: PLAIN, entry: first }]
  return {
    ok: true,
    beginnings: beginningNodes(bed),
    entry: first ?? Number.NEGATIVE_INFINITY,
    lower: plain.lower,
    upper: plain.upper,
    ...(record.customerCalls === true ? asItArose(record, bed, end, asOf, met) : { ways: [plain], entries: met, yearsAtRisk: 0 }),
    traits: bed.traits,
    segments: bed.segments,
  }
}

/** The ways of a customer's record, and the years in which its bed could have been taken out for another reason. */
function asItArose(
  record: BedRecord,
  bed: { lastSeen: number; latest: number },
  end: { latest: number } | null,
  asOf: number,
  met: RecordEntry[],
): Pick<ReadRecord, 'ways' | 'entries' | 'yearsAtRisk'> {
  const seen = Math.max(bed.lastSeen, bed.latest + 1)
  const listed = record.listedDay === null || record.listedDay === undefined ? null : parseDay(record.listedDay)
  const entries: RecordEntry[] =
    listed === null || listed > asOf || met.some(({ entry }) => entry <= listed)
      ? met
      : [
          { sort: CALLS, entry: listed - CALLED_AFTER_DAYS },
          { sort: SILENT, entry: Number.NEGATIVE_INFINITY },
        ]
  const from = Math.max(bed.latest, listed ?? Number.NEGATIVE_INFINITY, ...met.map(({ entry }) => entry))
  const yearsAtRisk = Math.max(0, ((end?.latest ?? asOf) - from) / DAYS_PER_YEAR)
  if (end === null) return { ways: waysInService(seen, Math.max(asOf, seen)), entries, yearsAtRisk }
  const out = Math.max(end.latest, seen + 1)
  const outFrom = record.end?.outFromDay === null || record.end?.outFromDay === undefined ? out : (parseDay(record.end.outFromDay) ?? out)
  const failed = waysFailed({
    ...{ seen, outFrom, out, found: record.end?.found ?? null },
    looksPerYear: looksPerYear(looksSince(record, bed.latest, out), yearsAtRisk),
  })
  const cause = record.end?.cause
  return {
    ways: cause === 'failed' ? failed : cause === 'unknown' ? [...failed, ...waysRemoved(out)] : waysRemoved(out),
    entries,
    yearsAtRisk,
  }
}

/** Days on which it was looked at, but for that on which it went in. */
function looksSince(record: BedRecord, began: number, until: number): number {
  return (record.visitDays ?? []).filter((day) => {
    const number = parseDay(day)
    return number !== null && number > began + KNOWN_WITHIN_DAYS && number < until
  }).length
}

/** The end as known on the day: null when it lies later, undefined when it is no date. */
function endKnownBy(record: BedRecord, asOf: number): { earliest: number; latest: number } | null | undefined {
  if (record.end === null) return null
  const earliest = parseDay(record.end.earliestDay)
  const latest = parseDay(record.end.latestDay)
  if (earliest === null || latest === null || latest < earliest) return undefined
  return latest > asOf ? null : { earliest, latest }
}

/** For an ended bed the start of its end; else the last visit up to the day, or the first meeting. Null: never since it went in. */
function lastKnownWorking(record: BedRecord, end: { earliest: number } | null, asOf: number): IsoDay | null | undefined {
  if (end !== null) return record.end?.earliestDay
  let last: IsoDay | null = null
  for (const day of [record.firstSeenDay, record.lastSeenDay, ...(record.visitDays ?? [])]) {
    if (day === null) continue
    const number = parseDay(day)
    if (number === null) return undefined
    if (number <= asOf && (last === null || day > last)) last = day
  }
  return last
}
