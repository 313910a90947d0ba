import type { DriverKey } from '@almanac/records/forecast-driver'
import type { QuestionKey } from '@almanac/records/forecast-question'
import type { IsoDay } from '@almanac/units/calendar/day-number'
import type { ForecastSpeaking } from '../exposure/speaking.ts'
import type { ExposureSegment, WaterHistoryInput } from '../exposure/water-types.ts'

/** When a bed went in: both days equal when known exactly; null where that side is unknown ("before 2015": latestDay 2014-12-31, earliestDay null). */
export interface BedBeginning {
  readonly earliestDay: IsoDay | null
  readonly latestDay: IsoDay | null
}

/** What somebody found in the bed or measured of it on a day; null or absent where it was not looked at. */
export interface Inspection {
  /** Null where nobody wrote it down; such an inspection says nothing, since wear depends on the day. */
  readonly day: IsoDay | null
  /** Capacity between regenerations as a share of what such a bed gave when new; measured, not set. */
  readonly capacityShare?: number | null
  /** Over the softener at service flow, psi. */
  readonly pressureDropPsi?: number | null
  /** Water held by a drained sample, as a share of its weight. */
  readonly moistureShare?: number | null
  /** 'firm', 'some-soft', 'mushy' or 'broken'; any other word says nothing. */
  readonly beadCondition?: string | null
}

export interface BedForecastInput {
  /** The day the forecast speaks from; nothing measured after it is used. */
  readonly asOfDay: IsoDay
  readonly beginning: BedBeginning
  /** The first day somebody knew the bed to be there: it cannot have gone in later. Null or absent: lastSeenDay. */
  readonly firstSeenDay?: IsoDay | null
  /** The day of a list on which it stood without anybody having seen it: it cannot have gone in later, and may have failed before. Null or absent: none. */
  readonly listedDay?: IsoDay | null
  /** The earliest day on which the bed before it in the tank may have come out; it cannot have gone in before. Null or absent: none on record. */
  readonly earlierBedEndedDay?: IsoDay | null
  /** The last day somebody knew the bed to be working; null when never since it went in. */
  readonly lastSeenDay: IsoDay | null
  /** True for a customer of the firm, of whom a share, learned, would have called had the bed failed; absent: only looks count. */
  readonly customerCalls?: boolean
  readonly crosslinkPercent: number | null
  readonly resinVolumeFt3: number | null
  readonly gallonsPerDay: number | null
  readonly water: WaterHistoryInput
  /** The supply (or area) whose beds share an effect of their own, as in the records fitted; null or absent: none known. */
  readonly supply?: string | null
  /** Those of days after asOfDay are not used. */
  readonly inspections?: readonly Inspection[]
  /** How it is said; absent where nobody reads its sentences. */
  readonly speaking?: ForecastSpeaking
}

/**
 * What took (positive) or gave (negative) years of a typical life. All drivers but carbon and inspection add up to medianCleanLifeYears − medianLifeYears (shares under
 * 0.05 years are left out); for a bed that has outlived the typical life they run on to its middle due day.
 */
export interface Driver {
  readonly key: DriverKey
  readonly yearsTaken: number
  readonly fromDay: IsoDay
  /** e.g. "chloramine 2.5 mg/L since 2019: 3.1 years shorter" */
  readonly words: string
}

/** How much a missing fact blurs the due date, and what to ask. */
export interface Weakness {
  /** Standard deviation in years that better records could take away; sort "ask at the next call" by it, largest first. */
  readonly years: number
  readonly question: QuestionKey | null
  readonly byCause: readonly MeasurementGain[]
}

/** What measuring one thing would take from the doubt about a bed's due date. */
export interface MeasurementGain {
  readonly key: QuestionKey
  /** Standard deviation in years, as in Weakness. */
  readonly years: number
}

export interface CurvePoint {
  readonly day: IsoDay
  readonly yearsSinceBeginning: number
  /** Chance that the bed still works, given that it worked when last seen: 10%, mean, 90% over the doubt about the parameters. */
  readonly low: number
  readonly mid: number
  readonly high: number
}

export interface ForecastExplanation {
  readonly formula: string
  readonly inputs: readonly { readonly name: string; readonly value: string }[]
  readonly parametersVersion: string
  readonly sources: readonly string[]
}

export interface BedForecast {
  readonly asOfDay: IsoDay
  /** The day from which survival is uncertain. */
  readonly lastSeenDay: IsoDay
  readonly beginning: { readonly earliestDay: IsoDay; readonly latestDay: IsoDay }
  /** Day by which the bed has failed with chance 10, 50, 90%, given that it worked when last seen; may lie before asOfDay. */
  readonly due10Day: IsoDay
  readonly due50Day: IsoDay
  readonly due90Day: IsoDay
  /** Chance that it has failed unnoticed between last seen and as-of day. */
  readonly chanceAlreadyFailed: number
  /** Chance of failing within so many months after asOfDay, if it still works on asOfDay. */
  readonly chance3Months: number
  readonly chance12Months: number
  readonly chance24Months: number
  /** First calendar month of monthChances, 'YYYY-MM' (the month of asOfDay, counted from asOfDay on). */
  readonly firstMonth: string
  /** Chance of failing in each calendar month, given that it worked when last seen; with chanceAlreadyFailed they add up to at most 1. */
  readonly monthChances: readonly number[]
  /** monthChances at each shared parameter node, row by row: nodeMonthChances[node * monthChances.length + month]; see month-counts.ts. */
  readonly nodeMonthChances: Float64Array
  readonly medianLifeYears: number
  readonly medianCleanLifeYears: number
  readonly drivers: readonly Driver[]
  readonly exposure: readonly ExposureSegment[]
  readonly weakness: Weakness
  /** The measurement or answer that would sharpen this bed's date most; null where none would noticeably. */
  readonly sharpest: MeasurementGain | null
  readonly curve: readonly CurvePoint[]
  readonly explanation: ForecastExplanation
}
