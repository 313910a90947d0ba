import { formatTemperatureF } from '@almanac/units/format'
import { quoteNumber } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { fToC } from '@almanac/units/temperature'
import type { Speaking } from '../kit/speaking.ts'
import { waterDensityKgM3 } from './water-density.ts'
import { waterViscosityPaS } from './water-viscosity.ts'

export type WaterState = { temperatureC: number; densityKgM3: number; viscosityPaS: number }

/** Temperature taken when none was measured, °F; common practice, no source. */
export const ASSUMED_WATER_F = 60

/** Water at a temperature between 0 and 60 °C; callers have checked it. */
export function waterAt(temperatureC: number): WaterState {
  return { temperatureC, densityKgM3: waterDensityKgM3(temperatureC), viscosityPaS: waterViscosityPaS(temperatureC) }
}

/** Water as it runs through the softener; 60 °F where no temperature is recorded. Refuses what is no cold-water supply. */
export function waterStateF(temperatureF: number | null | undefined, { words, display }: Speaking): Result<WaterState> {
  if (temperatureF === null || temperatureF === undefined) {
    return ok(waterAt(fToC(ASSUMED_WATER_F)), {
      assumptions: [words('temperatureAssumed', { temperature: formatTemperatureF(ASSUMED_WATER_F, display) })],
      missing: [words('missing/temperature')],
      sources: WATER_SOURCES,
    })
  }
  if (!(temperatureF >= 32 && temperatureF <= 140)) {
    return refuse(words('badTemperature', { value: quoteNumber(temperatureF) }))
  }
  return ok(waterAt(fToC(temperatureF)), { sources: WATER_SOURCES })
}

const WATER_SOURCES = ['IAPWS R12-08 (viscosity)', 'Kell 1975 (density)']
