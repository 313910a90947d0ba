/** A part of the day in which driving is slower, in minutes since midnight on the clock of the place. */
export type RushHours = { readonly fromMinute: number; readonly toMinute: number; readonly factor: number }

/** How a straight line becomes a drive. A firm's own close-outs set `pace`; the rest is editable data. */
export type TravelModel = {
  /** Road ÷ straight distance for short drives, and for long ones. */
  readonly localCircuity: number
  readonly regionalCircuity: number
  /** Straight miles up to which a drive is local, and from which it is regional; between them the two are mixed. */
  readonly localMiles: number
  readonly regionalMiles: number
  readonly townMph: number
  readonly openMph: number
  /** Road miles at each end of a drive that go at the town's speed. */
  readonly townMilesEachEnd: number
  /** Minutes for starting, parking and walking to the door. */
  readonly stopMinutes: number
  readonly rush: readonly RushHours[]
  /** The firm's drives as a multiple of this model's: 1 until its own close-outs say otherwise. */
  readonly pace: number
}

/**
 * Road ÷ straight distance: 1.21 to 1.26 is typical and regions range from 1.22 to 1.44 (Newell 1980; Giacomin & Levinson 2015); 1.3 local and 1.2 regional lie
 * within. Speeds 25 to 30 mph in towns and 40 to 45 outside, the rush hours and the minutes of a stop: common practice, no source.
 */
export const USUAL_TRAVEL: TravelModel = {
  localCircuity: 1.3,
  regionalCircuity: 1.2,
  localMiles: 10,
  regionalMiles: 40,
  townMph: 27.5,
  openMph: 42.5,
  townMilesEachEnd: 2,
  stopMinutes: 2,
  rush: [
    { fromMinute: 7 * 60, toMinute: 9 * 60, factor: 1.2 },
    { fromMinute: 16 * 60, toMinute: 18 * 60, factor: 1.2 },
  ],
  pace: 1,
}
