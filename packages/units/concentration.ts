import { CACO3_G_PER_MOL } from './hardness.ts'
import { MG_PER_GRAIN } from './mass.ts'
import { LITRES_PER_FT3 } from './volume.ts'

export type ConcentrationUnit = 'mg/L' | 'ug/L' | 'g/L'

/** Standard atomic weights, g/mol; equivalent weights follow from the charge. */
export const NACL_G_PER_EQ = 58.443
export const KCL_G_PER_EQ = 74.551
export const NA_G_PER_EQ = 22.99
/** Half the molar mass of CaCO₃: 50.043 g per equivalent. */
export const CACO3_G_PER_EQ = CACO3_G_PER_MOL / 2

const MG_L: Record<ConcentrationUnit, number> = { 'mg/L': 1, 'ug/L': 0.001, 'g/L': 1000 }

/** Converts a concentration by mass between units. */
export function convertConcentration(value: number, from: ConcentrationUnit, to: ConcentrationUnit): number {
  return from === to ? value : (value * MG_L[from]) / MG_L[to]
}

/** Exchange capacity of a resin, eq/L to kilograins as CaCO₃ per ft³: 1 eq/L is 21.869 kgr/ft³, derived from exact definitions. */
export function eqLToKgrFt3(capacityEqL: number): number {
  return (capacityEqL * LITRES_PER_FT3 * CACO3_G_PER_EQ) / MG_PER_GRAIN
}

const KG_M3_PER_LB_FT3 = 0.45359237 / 0.3048 ** 3

/** Bulk density or salt dose: 1 lb/ft³ is 16.0185 kg/m³ (g/L). */
export const lbFt3ToGL = (densityLbFt3: number): number => densityLbFt3 * KG_M3_PER_LB_FT3
