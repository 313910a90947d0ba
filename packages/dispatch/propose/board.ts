import type { Load } from '../problem/problem.ts'
import type { RushHour } from '../travel/estimate-leg.ts'
import type { TravelTable } from '../travel/travel-table.ts'
import type { Saying } from './say.ts'

/** Times on a board are minutes on the wall clock since local midnight; money is in minor units; days are 'YYYY-MM-DD' in the company's zone. */
export interface WallSpan {
  readonly from: number
  readonly to: number
}

/** A day of the horizon. `minutesInDay` is 1,440 but for a change of clocks, which comes at `wallMinute` and puts the clock forward (above 0) or back by `byMinutes`. */
export interface BoardDay {
  readonly date: string
  readonly minutesInDay: number
  readonly clockChange?: { readonly wallMinute: number; readonly byMinutes: number }
}

export interface BoardVisit {
  readonly jobId: string
  /** The time written on the sheet, if any. */
  readonly startMinute?: number
}

/** One crew's day. */
export interface Sheet {
  readonly id: string
  /** As people call it: "Ortega and Falk, truck 3". */
  readonly label: string
  readonly date: string
  readonly people: number
  readonly skills: readonly string[]
  readonly shift: WallSpan
  /** So many minutes before the end of the shift are kept free where that costs less than overtime does; absent: none. */
  readonly inHandMinutes?: number
  readonly latestEnd: number
  /** Each begins within its span and takes so many minutes. */
  readonly breaks: readonly (WallSpan & { readonly minutes: number })[]
  /** Ids of `Board.travel`. */
  readonly startPlace: string
  readonly endPlace: string
  readonly capacity: Load
  /** Of one person of this crew; absent: `BoardPrices.overtimePerHour`. */
  readonly overtimePerHour?: number
  /** In the present order. */
  readonly visits: readonly BoardVisit[]
}

/** A job, waiting or on a sheet. */
export interface BoardJob {
  readonly id: string
  readonly label: string
  /** Id of `Board.travel`; null: no place known. */
  readonly place: string | null
  readonly minutes: number
  /** Spread of its length: standard deviation of the logarithm about `minutes`, its middle. Absent: it takes just so long. */
  readonly spread?: number
  readonly people: number
  readonly skills: readonly string[]
  readonly out: Load
  readonly back: Load
  /** When the work may begin; empty: any time of any day. */
  readonly windows: readonly (WallSpan & { readonly date: string })[]
  /** Not before this day: parts, or the customer's wish. */
  readonly earliest?: string
  /** Why not before, as an end to a sentence: "6 ft³ of resin comes on Thu 3 Dec". */
  readonly earliestBecause?: string
  /** Each day after this one costs `riskPerDay`. */
  readonly due?: string
  readonly riskPerDay?: number
  /** Price of leaving it waiting; absent: `BoardPrices.leaveOut`. */
  readonly leaveOutPrice?: number
  /** Told to the customer: stays on this sheet and begins within these times. */
  readonly promised?: WallSpan & { readonly sheetId: string }
}

/** What is weighed against what, in minor units. */
export interface BoardPrices {
  /** One person. */
  readonly perDriveHour: number
  readonly overtimePerHour: number
  readonly perMile: number
  /** Sending a crew out at all. */
  readonly perSheet: number
  /** Disturbance: moving a job that stands on a sheet to another. */
  readonly perMove: number
  /** Disturbance: another time for a job that stays on its sheet, but within what was promised. */
  readonly perRetime: number
  /** Leaving a waiting job waiting, and taking a job off a sheet altogether. */
  readonly leaveOut: number
  readonly takeOff: number
  /** An hour past its end that nine of ten of a sheet's days are over by; absent: days are planned as long as usual. */
  readonly perLateHour?: number
}

/** `locale` and `unitSystem` are how its sentences write days, clocks, numbers and miles. */
export interface Board extends Saying {
  readonly days: readonly BoardDay[]
  readonly sheets: readonly Sheet[]
  readonly jobs: readonly BoardJob[]
  readonly travel: TravelTable
  readonly prices: BoardPrices
  readonly rush?: readonly RushHour[]
}
