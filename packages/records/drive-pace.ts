/**
 * How long a company's drives take against usual ones, as its owner took it over: factors on the time of all, of short and of long drives and on road miles,
 * and how many recorded drives on how many days it was learned from.
 */
export type DrivePace = {
  readonly factor: number
  readonly shortFactor: number
  readonly longFactor: number
  readonly roadFactor: number
  readonly drives: number
  readonly days: number
}

/** Kept among the company's own values, so that it has a version, a history and a way back. */
export const DRIVE_PACE_KEY = 'drives:pace'

/** Fewer drives, or drives of fewer days, say nothing: one crew that closes its visits in the evening makes a handful. Our choice, no source. */
export const PACE_NEEDS = { drives: 30, days: 5 } as const

/** No factor is believed beyond these. Our choice, no source. */
export const PACE_BOUNDS = { least: 0.7, most: 1.5 } as const
