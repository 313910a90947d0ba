export type MassUnit = 'lb' | 'kg' | 'g' | 'mg' | 'oz' | 'grain'

/** Grams in one avoirdupois pound, exactly. */
export const GRAMS_PER_LB = 453.59237
/** Milligrams in one grain, exactly: 453.59237 g / 7000. */
export const MG_PER_GRAIN = 64.79891

const GRAMS: Record<MassUnit, number> = {
  lb: GRAMS_PER_LB,
  kg: 1000,
  g: 1,
  mg: 0.001,
  oz: GRAMS_PER_LB / 16,
  grain: MG_PER_GRAIN / 1000,
}

/** Converts a mass between units; exact factors. */
export function convertMass(value: number, from: MassUnit, to: MassUnit): number {
  return from === to ? value : (value * GRAMS[from]) / GRAMS[to]
}

export const lbToKg = (massLb: number): number => (massLb * GRAMS_PER_LB) / 1000
