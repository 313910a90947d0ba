import { LITRES_PER_FT3, LITRES_PER_GALLON } from './volume.ts'

export type FlowUnit = 'gpm' | 'L/min' | 'm3/h' | 'L/h'

const LITRES_PER_MINUTE: Record<FlowUnit, number> = { gpm: LITRES_PER_GALLON, 'L/min': 1, 'm3/h': 1000 / 60, 'L/h': 1 / 60 }

/** Converts a flow between units; gallons are US. */
export function convertFlow(value: number, from: FlowUnit, to: FlowUnit): number {
  return from === to ? value : (value * LITRES_PER_MINUTE[from]) / LITRES_PER_MINUTE[to]
}

export const gpmToLMin = (flowGpm: number): number => flowGpm * LITRES_PER_GALLON

/** Superficial velocity, m/s, of one gpm over one ft²: 6.79097e-4. */
const M_S_PER_GPM_FT2 = LITRES_PER_GALLON / 1000 / 60 / 0.3048 ** 2

export const gpmFt2ToMS = (fluxGpmFt2: number): number => fluxGpmFt2 * M_S_PER_GPM_FT2
export const mSToGpmFt2 = (velocityMS: number): number => velocityMS / M_S_PER_GPM_FT2
/** 1 gpm/ft² is 2.44475 m/h. */
export const gpmFt2ToMH = (fluxGpmFt2: number): number => fluxGpmFt2 * M_S_PER_GPM_FT2 * 3600

/** Bed volumes per hour of one gpm through one ft³: 8.0208. */
export const gpmFt3ToBvH = (rateGpmFt3: number): number => (rateGpmFt3 * 60 * LITRES_PER_GALLON) / LITRES_PER_FT3
export const bvHToGpmFt3 = (bvPerHour: number): number => (bvPerHour * LITRES_PER_FT3) / (60 * LITRES_PER_GALLON)
/** Empty-bed contact time in seconds at a rate in gpm/ft³: 448.8 s at 1; infinite (as null) at no flow. */
export function emptyBedContactSeconds(rateGpmFt3: number): number | null {
  return rateGpmFt3 > 0 ? 3600 / gpmFt3ToBvH(rateGpmFt3) : null
}
