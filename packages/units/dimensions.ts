import { type ConcentrationUnit, convertConcentration } from './concentration.ts'
import { convertFlow, type FlowUnit } from './flow.ts'
import { convertHardness, type HardnessUnit } from './hardness.ts'
import { convertLength, type LengthUnit } from './length.ts'
import { convertMass, type MassUnit } from './mass.ts'
import { convertPressure, type PressureUnit } from './pressure.ts'
import { convertTemperature, type TemperatureUnit } from './temperature.ts'
import type { UnitSystem } from './unit-system.ts'
import { convertVolume, type VolumeUnit } from './volume.ts'

/** Units an amount may be typed in, the one it is kept in first, and how one is turned into another. */
export type Dimension = { units: readonly string[]; metric: string; convert: (value: number, from: string, to: string) => number }

const dimension = <U extends string>(
  units: readonly [U, ...U[]],
  metric: U,
  convert: (value: number, from: U, to: U) => number,
): Dimension => ({
  units,
  metric,
  convert: (value, from, to) => convert(value, from as U, to as U),
})

/** An amount that has one unit only, or none. */
export const oneUnit = (unit: string): Dimension => ({ units: [unit], metric: unit, convert: (value) => value })

export const HARDNESS = dimension<HardnessUnit>(['gpg', 'mg/L', 'dH', 'fH', 'mmol/L'], 'mg/L', convertHardness)
export const CONCENTRATION = dimension<ConcentrationUnit>(['mg/L', 'ug/L'], 'mg/L', convertConcentration)
export const LENGTH = dimension<LengthUnit>(['in', 'cm', 'mm'], 'cm', convertLength)
export const SMALL_LENGTH = dimension<LengthUnit>(['in', 'mm', 'cm'], 'mm', convertLength)
export const PRESSURE = dimension<PressureUnit>(['psi', 'bar', 'kPa'], 'bar', convertPressure)
export const MASS = dimension<MassUnit>(['lb', 'kg'], 'kg', convertMass)
export const VOLUME = dimension<VolumeUnit>(['ft3', 'L'], 'L', convertVolume)
export const FLOW = dimension<FlowUnit>(['gpm', 'L/min'], 'L/min', convertFlow)
export const TEMPERATURE = dimension<TemperatureUnit>(['F', 'C'], 'C', convertTemperature)

/** The unit to begin with for people of a system. */
export const firstUnit = ({ units, metric }: Dimension, system: UnitSystem): string => (system === 'us' ? (units[0] ?? '') : metric)
