import { CACO3_G_PER_EQ, NA_G_PER_EQ } from '@almanac/units/concentration'
import { gpgToMgL } from '@almanac/units/hardness'
import { LITRES_PER_GALLON } from '@almanac/units/volume'
import type { Salt } from './capacity.ts'

/** Salt that one gallon of refill water dissolves, lb: the 3 lb/gal rule for NaCl (2.99 derived); KCl 2.6 at 10 °C from memory. */
export const REFILL_LB_PER_GAL: Readonly<Record<Salt, number>> = { NaCl: 3, KCl: 2.6 }

/** Refill water for a salt dose, gallons: 15 lb of NaCl need 5.0. */
export function refillWaterGal(saltLb: number, salt: Salt = 'NaCl'): number {
  return saltLb / REFILL_LB_PER_GAL[salt]
}

/** Sodium that softening adds, mg/L: 0.4594 per mg of hardness as CaCO₃, so 7.864 per gpg removed. Zero when regenerated with KCl. */
export function sodiumAddedMgL(hardnessRemovedGpg: number, salt: Salt = 'NaCl'): number {
  return salt === 'KCl' ? 0 : (gpgToMgL(Math.max(0, hardnessRemovedGpg)) * NA_G_PER_EQ) / CACO3_G_PER_EQ
}

/** Potassium, g/eq (standard atomic weight). */
const K_G_PER_EQ = 39.098

/** Potassium that softening with KCl adds, mg/L: 0.7813 per mg of hardness as CaCO₃. */
export function potassiumAddedMgL(hardnessRemovedGpg: number): number {
  return (gpgToMgL(Math.max(0, hardnessRemovedGpg)) * K_G_PER_EQ) / CACO3_G_PER_EQ
}

/** Sodium in a US glass of 8 fl oz, mg. */
export function sodiumPerGlassMg(sodiumMgL: number): number {
  return (sodiumMgL * LITRES_PER_GALLON) / 16
}

/** EPA drinking-water advisory for people on a diet of at most 500 mg of sodium a day, mg/L. */
export const SODIUM_ADVISORY_MG_L = 20
