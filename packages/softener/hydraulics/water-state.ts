import { quoteNumber } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { fToC } from '@almanac/units/temperature'
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
export function waterStateF(temperatureF: number | null | undefined): Result<WaterState> {
  if (temperatureF === null || temperatureF === undefined) {
    return ok(waterAt(fToC(ASSUMED_WATER_F)), {
      assumptions: [`Water temperature not measured: ${ASSUMED_WATER_F} °F assumed.`],
      missing: ['water temperature'],
      sources: WATER_SOURCES,
    })
  }
  if (!(temperatureF >= 32 && temperatureF <= 140)) {
    return refuse(`A water temperature of ${quoteNumber(temperatureF)} °F is outside 32 to 140 °F; measure it again at the softener.`)
  }
  return ok(waterAt(fToC(temperatureF)), { sources: WATER_SOURCES })
}

const WATER_SOURCES = ['IAPWS R12-08 (viscosity)', 'Kell 1975 (density)']
