import type { IsoDay } from '@almanac/units/calendar/day-number'
import type { BedBeginning, Inspection } from '../bed-forecast/bed-forecast-types.ts'
import type { WaterHistoryInput } from '../exposure/water-types.ts'

/**
 * What a bed's end says of its life. failed: worn out, the only cause that counts as the end of its life. removed-early: taken out for convenience while it worked.
 * workmanship: an early call-back that says something about the job and nothing about resin, kept out of the fit. other: tank, valve, house; like removed-early.
 * unknown: nobody wrote it down; failed or removed, as its age and the firm's other records make it.
 */
export type LifeEnd = 'failed' | 'removed-early' | 'workmanship' | 'other' | 'unknown'

/** How a bed ended. */
export interface RecordedEnd {
  /** Between the last inspection that found it working and the one that found it failed; both equal when the day is known. */
  readonly earliestDay: IsoDay
  readonly latestDay: IsoDay
  readonly cause: LifeEnd
  /** First day on which it may have come out; null or absent: latestDay. */
  readonly outFromDay?: IsoDay | null
  /** How its failure came to light; null or absent: nobody wrote it down. */
  readonly found?: 'call' | 'visit' | null
}

/** One bed as the firm has it on record. */
export interface BedRecord {
  readonly beginning: BedBeginning
  /** The day it first came under the firm's eyes; a bed that failed before would never have been recorded. Null: from its beginning. */
  readonly firstSeenDay: IsoDay | null
  /** The last day known to be working. */
  readonly lastSeenDay: IsoDay | null
  /** All days it was seen working, where they are known: a fit or backtest for a past day needs what was known on that day. */
  readonly visitDays?: readonly IsoDay[]
  /** Null: not ended on record. */
  readonly end: RecordedEnd | null
  /**
   * True for a customer of the firm: a share of them, learned, calls when the water turns hard, so that silence says something. Absent: only looks count, and the end's
   * days bound the failure.
   */
  readonly customerCalls?: boolean
  /** The day of the list by which the firm knew of the bed without anybody having seen it work; a bed gone before would not be on it. Null or absent: none. */
  readonly listedDay?: IsoDay | null
  readonly crosslinkPercent: number | null
  readonly resinVolumeFt3: number | null
  readonly gallonsPerDay: number | null
  readonly water: WaterHistoryInput
  /** Key of the supply or area whose beds share an effect; null or absent: none of its own. */
  readonly supply?: string | null
  /** What was found in it while in service and, graded at its removal, in the sample of it. */
  readonly inspections?: readonly Inspection[]
}
