export type VolumeUnit = 'ft3' | 'L' | 'gal' | 'm3' | 'floz'

/** Litres in one US gallon: 231 cubic inches exactly. */
export const LITRES_PER_GALLON = 3.785411784
/** Litres in one cubic foot: (0.3048 m)³ exactly. */
export const LITRES_PER_FT3 = 28.316846592

const LITRES: Record<VolumeUnit, number> = {
  ft3: LITRES_PER_FT3,
  L: 1,
  gal: LITRES_PER_GALLON,
  m3: 1000,
  floz: LITRES_PER_GALLON / 128,
}

/** Converts a volume between units; gallons and fluid ounces are US. */
export function convertVolume(value: number, from: VolumeUnit, to: VolumeUnit): number {
  return from === to ? value : (value * LITRES[from]) / LITRES[to]
}

export const ft3ToL = (volumeFt3: number): number => volumeFt3 * LITRES_PER_FT3
export const galToL = (volumeGal: number): number => volumeGal * LITRES_PER_GALLON
export const lToGal = (volumeL: number): number => volumeL / LITRES_PER_GALLON
