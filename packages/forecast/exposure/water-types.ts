import type { Disinfectant } from '@almanac/records/disinfectant'
import type { MeasuringPoint } from '@almanac/records/measuring-point'
import type { IsoDay } from '@almanac/units/calendar/day-number'

/** What a water supply delivers from a day on, until its next period begins. Null means nobody wrote it down. */
export interface SupplyPeriod {
  readonly fromDay: IsoDay
  readonly disinfectant: Disinfectant | null
  /** Residual as Cl₂, mg/L. */
  readonly disinfectantMgL: number | null
  readonly hardnessGpg: number | null
  readonly ironMgL: number | null
  readonly temperatureC?: number | null
}

export interface WaterTest {
  readonly day: IsoDay
  readonly point: MeasuringPoint
  readonly freeChlorineMgL?: number | null
  readonly totalChlorineMgL?: number | null
  readonly hardnessGpg?: number | null
  readonly ironMgL?: number | null
  readonly temperatureC?: number | null
}

/** Equipment ahead of the softener; toDay null means still there. Only carbon removes disinfectant; an iron filter removes iron. */
export interface PreTreatment {
  readonly kind: 'carbon' | 'iron-filter' | 'other'
  readonly fromDay: IsoDay | null
  readonly toDay: IsoDay | null
}

export interface WaterHistoryInput {
  readonly supplyPeriods: readonly SupplyPeriod[]
  readonly tests: readonly WaterTest[]
  readonly preTreatments: readonly PreTreatment[]
}

/** Where a value of a segment came from, weakest last. */
export type ValueOrigin = 'measured' | 'supply' | 'assumed'

/** What reaches the bed between two days: constant, at the softener inlet. toDay null means until further notice. */
export interface ExposureSegment {
  readonly fromDay: IsoDay
  readonly toDay: IsoDay | null
  readonly freeChlorineMgL: number
  readonly chloramineMgL: number
  readonly ironMgL: number
  readonly hardnessGpg: number | null
  readonly temperatureC: number | null
  readonly disinfectantOrigin: ValueOrigin
  readonly ironOrigin: ValueOrigin
  readonly carbonAhead: boolean
  /** Plain words, e.g. "supply: chloramine 2.5 mg/L; carbon ahead removes it". */
  readonly why: string
}
