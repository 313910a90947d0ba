import type { BedInputs } from '@almanac/database/read/bed-inputs'
import type { ForecastRow } from '@almanac/database/sql/store-forecasts'
import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import type { ForecastSpeaking } from '@almanac/forecast/exposure/speaking'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { packMonths } from './bed-months.ts'
import { forecastInput } from './forecast-input.ts'

/** A record without a forecast asks before all others: nothing is known of it. */
const WEAKEST = 99

function middleDay(earliest: string, latest: string): string {
  return isoDay(Math.round(((parseDay(earliest) ?? 0) + (parseDay(latest) ?? 0)) / 2))
}

/** Forecasts one bed into the row that is stored; a contradiction in the record gives a row with the sentence that says so. */
export function forecastRow(bed: BedInputs, asOfDay: string, parameters: ForecastParameters, speaking: ForecastSpeaking): ForecastRow {
  const place = { bedId: bed.id, siteId: bed.siteId, waterSupplyId: bed.waterSupplyId }
  const result = forecastBed(forecastInput(bed, asOfDay, speaking), parameters, 'figures')
  if (!result.ok) return refusedRow(place, result.reason)
  const { value } = result
  const monthChances = packMonths(value.nodeMonthChances, value.monthChances.length)
  if (monthChances === null) return refusedRow(place, speaking.words('no/chance'))
  return {
    ...place,
    due10Day: value.due10Day,
    due50Day: value.due50Day,
    due90Day: value.due90Day,
    chance3Months: value.chance3Months,
    chance12Months: value.chance12Months,
    chance24Months: value.chance24Months,
    chanceAlreadyFailed: value.chanceAlreadyFailed,
    beganMiddleDay: middleDay(value.beginning.earliestDay, value.beginning.latestDay),
    weakness: value.weakness.years,
    questionKey: value.weakness.question,
    monthChances,
    drivers: value.drivers,
    assumptions: result.assumptions,
    missing: result.missing,
    refusal: null,
  }
}

/** A row that says why there is no forecast. */
function refusedRow(place: Pick<ForecastRow, 'bedId' | 'siteId' | 'waterSupplyId'>, refusal: string): ForecastRow {
  return {
    ...place,
    due10Day: null,
    due50Day: null,
    due90Day: null,
    chance3Months: null,
    chance12Months: null,
    chance24Months: null,
    chanceAlreadyFailed: null,
    beganMiddleDay: null,
    weakness: WEAKEST,
    questionKey: null,
    monthChances: new Uint16Array(0),
    drivers: [],
    assumptions: [],
    missing: [],
    refusal,
  }
}
