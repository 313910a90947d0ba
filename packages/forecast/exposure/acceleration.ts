import type { ParameterValues } from '../priors/forecast-parameters.ts'

/** Conditions under which a bed ages one clean year a year. */
export const REFERENCE = {
  crosslinkPercent: 8,
  temperatureC: 15,
  /** 138 gal per household and day (Residential End Uses of Water, 2016) through 1.5 ft³. */
  gallonsPerDayPerFt3: 92,
} as const

/** What does not change over a bed's life. */
export interface BedTraits {
  readonly crosslinkPercent: number
  readonly gallonsPerDayPerFt3: number | null
  /** Effect on ln life that it shares with the other beds of its supply. */
  readonly supplyLog?: number
}

/** What reaches it at a time (see ExposureSegment). */
export interface InletWater {
  readonly freeChlorineMgL: number
  readonly chloramineMgL: number
  readonly ironMgL: number
  readonly temperatureC: number | null
}

/** The logarithm of the ageing rate, split by cause; the sum's exponential is the rate in clean years per year. */
export interface AgeingParts {
  readonly freeChlorine: number
  readonly chloramine: number
  readonly iron: number
  readonly crosslink: number
  readonly throughput: number
  readonly temperature: number
  readonly supply: number
}

/** ln of the ageing rate from oxidants: exponent · ln(1 + free + weight·chloramine), mg/L as Cl₂. */
function oxidantLog(values: ParameterValues, water: InletWater): number {
  return values.chlorineExponent * Math.log1p(water.freeChlorineMgL + values.chloramineWeight * water.chloramineMgL)
}

/** ln of the ageing rate from what the bed is and how hard it works: constant over its life. */
export function traitsLog(values: ParameterValues, bed: BedTraits): number {
  return crosslinkLog(values, bed) + throughputLog(values, bed) - (bed.supplyLog ?? 0)
}

function crosslinkLog(values: ParameterValues, bed: BedTraits): number {
  return (-values.crosslinkEffect * (bed.crosslinkPercent - REFERENCE.crosslinkPercent)) / 2
}

function throughputLog(values: ParameterValues, bed: BedTraits): number {
  if (bed.gallonsPerDayPerFt3 === null) return 0
  return values.throughputExponent * Math.log(bed.gallonsPerDayPerFt3 / REFERENCE.gallonsPerDayPerFt3)
}

function temperatureLog(values: ParameterValues, water: InletWater): number {
  return water.temperatureC === null ? 0 : (values.temperatureEffect * (water.temperatureC - REFERENCE.temperatureC)) / 10
}

/** ln of the ageing rate from the water of one segment. */
export function waterLog(values: ParameterValues, water: InletWater): number {
  return oxidantLog(values, water) + values.ironExponent * Math.log1p(water.ironMgL) + temperatureLog(values, water)
}

/** The same by cause. */
export function ageingParts(values: ParameterValues, bed: BedTraits, water: InletWater): AgeingParts {
  const oxidant = oxidantLog(values, water)
  const free = water.freeChlorineMgL
  const chloramine = values.chloramineWeight * water.chloramineMgL
  const share = free + chloramine > 0 ? free / (free + chloramine) : 0
  return {
    freeChlorine: oxidant * share,
    chloramine: oxidant - oxidant * share,
    iron: values.ironExponent * Math.log1p(water.ironMgL),
    crosslink: crosslinkLog(values, bed),
    throughput: throughputLog(values, bed),
    temperature: temperatureLog(values, water),
    supply: -(bed.supplyLog ?? 0),
  }
}
