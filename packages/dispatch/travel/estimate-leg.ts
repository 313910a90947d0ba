import { greatCircleMiles, isPoint, type LatLon } from './point.ts'

/** Where a leg's figures come from. */
export type LegOrigin = 'estimated' | 'server' | 'unknown'

/** One drive; null where it is unknown, never a made-up number. */
export interface Leg {
  readonly origin: LegOrigin
  readonly seconds: number | null
  readonly miles: number | null
}

/** A span of the day, in minutes since local midnight, in which drives take `factor` times as long. */
export interface RushHour {
  readonly from: number
  readonly to: number
  readonly factor: number
}

/** The firm's own factors on the usual road distance and on the usual time of short and of long drives; 1 where nothing is known. */
export interface Calibration {
  readonly circuityFactor: number
  readonly shortFactor: number
  readonly longFactor: number
  readonly rush: readonly RushHour[]
}

/** Rush hours: common practice, no source. */
export const UNCALIBRATED: Calibration = {
  circuityFactor: 1,
  shortFactor: 1,
  longFactor: 1,
  rush: [
    { from: 7 * 60, to: 9 * 60, factor: 1.2 },
    { from: 16 * 60, to: 18 * 60, factor: 1.2 },
  ],
}

// Road ÷ straight line: 1.3 local, 1.2 regional (Newell 1980; Giacomin & Levinson 2015 find 1.21–1.26 typical). Where local ends is our choice, no source.
const LOCAL = { miles: 5, circuity: 1.3 }
const REGIONAL = { miles: 30, circuity: 1.2 }
// 25–30 mph in town, 40–45 mph in the country: common practice, no source. So is the length of drive at which each holds.
const TOWN = { miles: 3, mph: 27.5 }
const COUNTRY = { miles: 25, mph: 42.5 }
/** A drive counts as short up to here when the firm's own factors are found and used. */
export const SHORT_MILES = 8

function between(x: number, a: number, atA: number, b: number, atB: number): number {
  const share = Math.min(1, Math.max(0, (x - a) / (b - a)))
  return atA + share * (atB - atA)
}

/** Usual road distance of a straight line, in miles. */
export function usualRoadMiles(straightMiles: number): number {
  return straightMiles * between(straightMiles, LOCAL.miles, LOCAL.circuity, REGIONAL.miles, REGIONAL.circuity)
}

/** Usual time of a drive of so many road miles outside rush hours, in seconds. */
export function usualSeconds(roadMiles: number): number {
  return (roadMiles / between(roadMiles, TOWN.miles, TOWN.mph, COUNTRY.miles, COUNTRY.mph)) * 3600
}

/** A drive between two points, outside rush hours, from their coordinates alone. Without coordinates it is unknown. */
export function estimateLeg(from: LatLon | null, to: LatLon | null, calibration: Calibration): Leg {
  if (!isPoint(from) || !isPoint(to)) return { origin: 'unknown', seconds: null, miles: null }
  const usual = usualRoadMiles(greatCircleMiles(from, to))
  // A smooth change between the firm's two factors, or a mile more could take less time.
  const factor = between(usual, SHORT_MILES / 2, calibration.shortFactor, 5 * SHORT_MILES, calibration.longFactor)
  return { origin: 'estimated', seconds: usualSeconds(usual) * factor, miles: usual * calibration.circuityFactor }
}

/** By how much a drive beginning at this minute of the day is longer. */
export function rushFactor(calibration: Calibration, minuteOfDay: number): number {
  return calibration.rush.findLast((span) => minuteOfDay >= span.from && minuteOfDay <= span.to)?.factor ?? 1
}
