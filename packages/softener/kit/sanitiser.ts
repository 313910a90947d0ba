import { formatDoseFlOz } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import type { Speaking } from './speaking.ts'

/** Bleach for polystyrene resin, fl oz of 5.25% sodium hypochlorite per ft³: typical manual. */
const BLEACH_FL_OZ_FT3 = 1.2
const BLEACH_STRENGTH_PERCENT = 5.25
/** Household bleach sold today, % sodium hypochlorite; common practice, no source. */
const USUAL_BLEACH_PERCENT = 8.25

/** The dose to pour, and its strength, as people read them: "1.1 fl oz of plain 8.25% bleach". `bleachPercent` where the bottle at hand is known. */
export function sanitiserText(resinFt3: number, bleachPercent: number | null | undefined, { display, words }: Speaking): string {
  const { dose, strength } = sanitiser(resinFt3, bleachPercent)
  return words('bleachText', { dose: formatDoseFlOz(dose, display), percent: formatPercent(strength / 100, display, 2) })
}

/** Dose and strength; a strength that no bottle has is not believed. */
export function sanitiser(resinFt3: number, bleachPercent: number | null | undefined) {
  const usable = bleachPercent != null && bleachPercent >= 1 && bleachPercent <= 15
  const strength = usable ? bleachPercent : USUAL_BLEACH_PERCENT
  return { usable, strength, dose: Math.max(0.1, Math.round(sanitiserDoseFlOz(resinFt3, strength) * 10) / 10) }
}

/** Dose of bleach of a given strength, fl oz: 1.2 per ft³ at 5.25%, less in proportion when stronger. */
export function sanitiserDoseFlOz(resinFt3: number, bleachPercent: number): number {
  return (BLEACH_FL_OZ_FT3 * resinFt3 * BLEACH_STRENGTH_PERCENT) / bleachPercent
}
