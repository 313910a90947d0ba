import { type DrivePace, PACE_BOUNDS, PACE_NEEDS } from '@almanac/records/drive-pace'
import { type Calibration, rushFactor, SHORT_MILES, UNCALIBRATED, usualRoadMiles, usualSeconds } from './estimate-leg.ts'
import { greatCircleMiles, isPoint, type LatLon } from './point.ts'

/** One drive as it was recorded: from a close-out's departure and arrival, miles where the odometer was read. */
export interface DriveObservation {
  readonly from: LatLon | null
  readonly to: LatLon | null
  readonly minutes: number
  readonly miles?: number
  /** The day on which it was driven, as the crew's calendar has it. */
  readonly day: string
  /** Minutes since local midnight at which it began. */
  readonly minuteOfDay: number
}

export interface CalibrationResult {
  /** Null while there are too few drives, or they are of too few days, to say anything. */
  readonly pace: DrivePace | null
  readonly used: number
  readonly days: number
  /** Left out: without coordinates, no drive worth the name, faster than a van, or far from all others (a stop on the way, a button pressed late). */
  readonly setAside: number
}

/** Weight of the usual figures, in drives: with this many of its own a firm is halfway to them. Our choice, no source. */
const PRIOR_DRIVES = 12
const LEAST_MILES = 0.3
const MOST_MINUTES = 240
/** No loaded van does more, door to door: the highest limit on most American interstates is 70 to 75 mph (state codes, from memory). */
const MOST_MPH = 75

/**
 * The firm's own factors from its recorded drives: medians of the logarithms of recorded ÷ usual, so that one drive of four hours changes nothing, drawn towards 1 while there
 * are few, and never beyond `PACE_BOUNDS`. Drives further than 3 robust standard deviations (1.4826 × the median deviation; Hampel 1974) from the median are set aside
 * first.
 */
export function calibrate(observations: readonly DriveObservation[]): CalibrationResult {
  const drives = observations.flatMap(({ from, to, minutes, miles, day, minuteOfDay }) => {
    if (!isPoint(from) || !isPoint(to) || !(minutes > 0) || minutes > MOST_MINUTES) return []
    const usual = usualRoadMiles(greatCircleMiles(from, to))
    if (usual < LEAST_MILES || usual / (minutes / 60) > MOST_MPH) return []
    const ratio = Math.log((minutes * 60) / (usualSeconds(usual) * rushFactor(UNCALIBRATED, minuteOfDay)))
    return [{ usual, ratio, day, road: miles !== undefined && miles > 0 ? Math.log(miles / usual) : null }]
  })
  const kept = withoutFar(drives, ({ ratio }) => ratio)
  const days = new Set(kept.map(({ day }) => day)).size
  const counted = { used: kept.length, days, setAside: observations.length - kept.length }
  if (counted.used < PACE_NEEDS.drives || days < PACE_NEEDS.days) return { pace: null, ...counted }
  const factorOf = (values: readonly number[]) =>
    toThousandth(Math.min(PACE_BOUNDS.most, Math.max(PACE_BOUNDS.least, Math.exp(drawn(values)))))
  const ratios = (some: typeof kept) => factorOf(some.map(({ ratio }) => ratio))
  const roads = withoutFar(
    drives.flatMap(({ road }) => road ?? []),
    (road) => road,
  )
  const pace: DrivePace = {
    factor: ratios(kept),
    shortFactor: ratios(kept.filter(({ usual }) => usual <= SHORT_MILES)),
    longFactor: ratios(kept.filter(({ usual }) => usual > SHORT_MILES)),
    roadFactor: factorOf(roads),
    drives: counted.used,
    days,
  }
  return { pace, ...counted }
}

/** What drives are worked out with: the pace that the owner took over, else usual speeds. */
export function calibrationOf(pace: DrivePace | null): Calibration {
  if (!pace) return UNCALIBRATED
  const { roadFactor, shortFactor, longFactor } = pace
  return { circuityFactor: roadFactor, shortFactor, longFactor, rush: UNCALIBRATED.rush }
}

const toThousandth = (factor: number) => Math.round(factor * 1000) / 1000

/** Median drawn towards nought as if that were `PRIOR_DRIVES` drives. */
function drawn(values: readonly number[]): number {
  if (values.length === 0) return 0
  return (median(values) * values.length) / (values.length + PRIOR_DRIVES)
}

function withoutFar<T>(items: readonly T[], of: (item: T) => number): T[] {
  if (items.length < 5) return items.filter((item) => Math.abs(of(item)) <= Math.log(3))
  const middle = median(items.map(of))
  const spread = Math.max(0.05, 1.4826 * median(items.map((item) => Math.abs(of(item) - middle))))
  return items.filter((item) => Math.abs(of(item) - middle) <= 3 * spread)
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? (sorted[half] as number) : ((sorted[half - 1] as number) + (sorted[half] as number)) / 2
}
