import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import { fitBedRecords, type RecordsFit } from '@almanac/forecast/fit/fit-bed-records'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import type { Result } from '@almanac/units/result'

export type FitInput = { records: BedRecord[]; prior: ForecastParameters; asOfDay: string; version: string }

/** The fit as a thread of its own calls it: seconds of arithmetic for a firm of a few thousand beds. */
export function fitAside({ records, prior, asOfDay, version }: FitInput): Result<RecordsFit> {
  return fitBedRecords(records, prior, asOfDay, version)
}
