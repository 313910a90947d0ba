import { CACO3_G_PER_EQ, NA_G_PER_EQ } from '@almanac/units/concentration'
import { gpgToMgL } from '@almanac/units/hardness'
import { LITRES_PER_GALLON } from '@almanac/units/volume'
import type { Salt } from './capacity.ts'

/** Salt that one gallon of refill water dissolves, lb: the 3 lb/gal rule for NaCl (2.99 derived); KCl 2.6 at 10 °C from memory. */
export const REFILL_LB_PER_GAL: Readonly<Record<Salt, number>> = { NaCl: 3, KCl: 2.6 }
/** Salt in one gallon of saturated NaCl brine, lb: 26.4% at 60 °F and specific gravity 1.20. Not the same as the refill rule. */
const BRINE_LB_PER_GAL = 2.65

/** Refill water for a salt dose, gallons: 15 lb of NaCl need 5.0. */
export function refillWaterGal(saltLb: number, salt: Salt = 'NaCl'): number {
  return saltLb / REFILL_LB_PER_GAL[salt]
}

/** Volume of saturated NaCl brine that holds a salt dose, gallons: 15 lb are in 5.66. */
export function brineVolumeGal(saltLb: number): number {
  return saltLb / BRINE_LB_PER_GAL
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

/** The steps of a regeneration with their usual rates; ranges where sources give them. */
export type RegenerationStep = { id: string; label: string; rate: string; minutes: readonly [number, number]; source: string }

export const REGENERATION_STEPS: readonly RegenerationStep[] = [
  {
    id: 'backwash',
    label: 'Backwash',
    rate: '6–8 gpm/ft² in public works, 4–5 in houses',
    minutes: [5, 15],
    source: 'Ten States Standards §4.4.2; Virginia 12 VAC 5-590-900; houses: common practice, no source',
  },
  {
    id: 'brine',
    label: 'Brine',
    rate: '8–12% brine, 0.25–0.62 gpm/ft³',
    minutes: [30, 60],
    source: 'Davis, Water and Wastewater Engineering, 2010; typical data sheets',
  },
  { id: 'slow-rinse', label: 'Slow rinse', rate: 'as the brine', minutes: [10, 30], source: 'Davis 2010; UFC 3-240-13FN' },
  { id: 'fast-rinse', label: 'Fast rinse', rate: '1.5–2 gpm/ft³', minutes: [5, 15], source: 'UFC 3-240-13FN; Davis 2010' },
]
