import { MG_PER_GRAIN } from './mass.ts'
import { LITRES_PER_GALLON } from './volume.ts'

/** `mg/L` is mg/L as CaCO₃, which people also write ppm; `mmol/L` is calcium plus magnesium. */
export type HardnessUnit = 'gpg' | 'mg/L' | 'dH' | 'fH' | 'mmol/L'

/** mg/L as CaCO₃ in one grain per US gallon; derived from exact definitions, 17.1181. */
const MG_L_PER_GPG = MG_PER_GRAIN / LITRES_PER_GALLON
/** Molar mass of CaCO₃, g/mol, from standard atomic weights (Ca 40.078, C 12.011, O 15.999). */
export const CACO3_G_PER_MOL = 100.086
/** Molar mass of CaO, g/mol; one German degree is 10 mg/L of it. */
const CAO_G_PER_MOL = 56.077

/** mg/L as CaCO₃ in one unit. */
const MG_L: Record<HardnessUnit, number> = {
  gpg: MG_L_PER_GPG,
  'mg/L': 1,
  dH: (10 * CACO3_G_PER_MOL) / CAO_G_PER_MOL,
  fH: 10,
  'mmol/L': CACO3_G_PER_MOL,
}

/** Converts hardness between units. */
export function convertHardness(value: number, from: HardnessUnit, to: HardnessUnit): number {
  return from === to ? value : (value * MG_L[from]) / MG_L[to]
}

export const gpgToMgL = (hardnessGpg: number): number => hardnessGpg * MG_L_PER_GPG
export const mgLToGpg = (hardnessMgL: number): number => hardnessMgL / MG_L_PER_GPG
