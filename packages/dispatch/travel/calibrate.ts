import { percentInSentence } from '@almanac/units/format-number'
import { type Calibration, rushFactor, SHORT_MILES, UNCALIBRATED, usualRoadMiles, usualSeconds } from './estimate-leg.ts'
import { greatCircleMiles, isPoint, type LatLon } from './point.ts'

/** One drive as it was recorded: from a close-out's departure and arrival, miles where the odometer was read. */
export interface DriveObservation {
  readonly from: LatLon | null
  readonly to: LatLon | null
  readonly minutes: number
  readonly miles?: number
  /** Minutes since local midnight at which it began. */
  readonly minuteOfDay: number
}

export interface CalibrationResult {
  readonly calibration: Calibration
  readonly used: number
  /** Left out: without coordinates, no drive worth the name, or far from all others (a stop on the way, a button pressed late). */
  readonly setAside: number
  readonly sentence: string
}

/** Weight of the usual figures, in drives: with this many of its own a firm is halfway to them. Our choice, no source. */
const PRIOR_DRIVES = 12
const LEAST_MILES = 0.3
const MOST_MINUTES = 240

/**
 * The firm's own factors from its recorded drives: medians of the logarithms of recorded ÷ usual, so that one drive of four hours changes nothing, drawn towards 1 while there
 * are few. Drives further than 3 robust standard deviations (1.4826 × the median deviation; Hampel 1974) from the median are set aside first.
 */
export function calibrate(observations: readonly DriveObservation[]): CalibrationResult {
  const drives = observations.flatMap(({ from, to, minutes, miles, minuteOfDay }) => {
    if (!isPoint(from) || !isPoint(to) || !(minutes > 0) || minutes > MOST_MINUTES) return []
    const usual = usualRoadMiles(greatCircleMiles(from, to))
    if (usual < LEAST_MILES) return []
    const ratio = Math.log((minutes * 60) / (usualSeconds(usual) * rushFactor(UNCALIBRATED, minuteOfDay)))
    return [{ usual, ratio, road: miles !== undefined && miles > 0 ? Math.log(miles / usual) : null }]
  })
  const kept = withoutFar(drives, ({ ratio }) => ratio)
  const all = drawn(
    kept.map(({ ratio }) => ratio),
    0,
  )
  const short = kept.filter(({ usual }) => usual <= SHORT_MILES)
  const long = kept.filter(({ usual }) => usual > SHORT_MILES)
  const roads = withoutFar(
    drives.flatMap(({ road }) => road ?? []),
    (road) => road,
  )
  const calibration: Calibration = {
    circuityFactor: Math.exp(drawn(roads, 0)),
    shortFactor: Math.exp(
      drawn(
        short.map(({ ratio }) => ratio),
        all,
      ),
    ),
    longFactor: Math.exp(
      drawn(
        long.map(({ ratio }) => ratio),
        all,
      ),
    ),
    rush: UNCALIBRATED.rush,
  }
  const setAside = observations.length - kept.length
  return { calibration, used: kept.length, setAside, sentence: sayResult(Math.exp(all), kept.length, setAside) }
}

function sayResult(factor: number, used: number, setAside: number): string {
  if (used === 0) return 'No recorded drives yet, so we use usual speeds.'
  const percent = Math.round(Math.abs(factor - 1) * 100)
  const compared =
    percent === 0 ? 'as long as usual' : `${percentInSentence(percent / 100)} ${factor > 1 ? 'longer' : 'shorter'} than usual`
  return `From ${used} recorded drives: they take ${compared}.${setAside > 0 ? ` ${setAside} were left out.` : ''}`
}

/** Median drawn towards `prior` as if that were `PRIOR_DRIVES` drives. */
function drawn(values: readonly number[], prior: number): number {
  if (values.length === 0) return prior
  return (median(values) * values.length + prior * PRIOR_DRIVES) / (values.length + PRIOR_DRIVES)
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
