import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'

/**
 * How a record can have come about. PLAIN: whatever the household would have done. CALLS: its household calls when the water turns hard. SILENT: it does not, so that
 * only looks count. REMOVED: the bed worked and was taken out for another reason. docs/decisions/how-records-arise.md derives the terms.
 */
export const PLAIN = 0
export const CALLS = 1
export const SILENT = 2
export const REMOVED = 3

/** One way: the bed worked until `lower` and had failed by `upper` (Infinity: it had not), in day numbers; `logFactor` makes ways of one record comparable. */
export interface RecordWay {
  readonly sort: typeof PLAIN | typeof CALLS | typeof SILENT | typeof REMOVED
  readonly lower: number
  readonly upper: number
  readonly logFactor: number
}

/** One kind of household under which the bed could come on record at all: it worked on `entry`; −Infinity where nothing had to hold. */
export interface RecordEntry {
  readonly sort: typeof PLAIN | typeof CALLS | typeof SILENT
  readonly entry: number
}

/**
 * A bed that fails gives hard water, which a household that calls notices within so many days, sooner and later alike. Common practice, no source. No record dates a
 * failure, only the call, so that how soon they call cannot be learned; it shifts every life by the same weeks.
 */
export const CALLED_WITHIN_DAYS = 183

/** Days before today up to which a bed is known to work when its household, who would have called, has not. */
export const CALLED_AFTER_DAYS = Math.round(CALLED_WITHIN_DAYS / 2)

const plain = (lower: number, upper = Number.POSITIVE_INFINITY): RecordWay => ({ sort: PLAIN, lower, upper, logFactor: 0 })

/** Of a bed in service on `asOf`, last seen working on `seen`. */
export function waysInService(seen: number, asOf: number): RecordWay[] {
  const known = asOf - CALLED_AFTER_DAYS
  if (known <= seen) return [plain(seen)]
  return [
    { ...plain(known), sort: CALLS },
    { ...plain(seen), sort: SILENT },
  ]
}

export interface FoundFailed {
  /** Last day seen working. */
  readonly seen: number
  /** Days between which it came out. */
  readonly outFrom: number
  readonly out: number
  /** How the failure came to light; null where nobody wrote it down. */
  readonly found: 'call' | 'visit' | null
  /** How often somebody looks at this bed: what a silent household's failure is found by. */
  readonly looksPerYear: number
}

/** Looks a year from those on record: a bed seldom seen is seldom found failed by chance. The tenth of a look and the year keep short records from extremes; a guess. */
export function looksPerYear(looks: number, years: number): number {
  return (looks + 0.1) / (Math.max(0, years) + 1)
}

/** Of a bed taken out failed, each a chance a year: of the call on that day, or of a look that found it. */
export function waysFailed({ seen, outFrom, out, found, looksPerYear }: FoundFailed): RecordWay[] {
  const since = Math.max(seen, Math.min(outFrom - CALLED_WITHIN_DAYS, out - 1))
  const yearly = (from: number) => -Math.log(Math.max(out - from, 1) / DAYS_PER_YEAR)
  const called: RecordWay = { sort: CALLS, lower: since, upper: out, logFactor: yearly(since) }
  if (found === 'call') return [called]
  // At a visit only half of those who call have not called yet.
  if (since <= seen) return [{ ...plain(seen, out), logFactor: yearly(seen) }]
  return [
    found === 'visit' ? { ...called, logFactor: Math.log(0.5) } : called,
    { sort: SILENT, lower: seen, upper: out, logFactor: found === 'visit' ? 0 : Math.log(looksPerYear) },
  ]
}

/** Of a bed taken out on `out` while it worked. */
export function waysRemoved(out: number): RecordWay[] {
  return [{ ...plain(out), sort: REMOVED }]
}
