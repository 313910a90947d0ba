import { GRAMS_PER_LB } from '@almanac/units/mass'
import type { UnitSystem } from '@almanac/units/unit-system'
import { LITRES_PER_GALLON } from '@almanac/units/volume'

/** Minor units in one of the currency: 100 for most. */
export function minorPer(currency: string): number {
  return 10 ** (new Intl.NumberFormat('en-US', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2)
}

/** Minor units as money: "$420.00". */
export function moneyWords(minor: number, currency: string): string {
  return new Intl.NumberFormat('en-US', { style: 'currency', currency }).format(minor / minorPer(currency))
}

/** A price is typed and read for a usual pack, and kept for one unit. `size` is the pack in that unit. */
function pack(size: number, label: string) {
  return {
    size,
    label,
    words: (minorPerUnit: number, currency: string) => `${moneyWords(minorPerUnit * size, currency)} for ${label}`,
  }
}

/** Salt: a 40 lb or a 25 kg bag. */
export const saltPack = (system: UnitSystem) => (system === 'us' ? pack(40, 'a 40 lb bag') : pack(25_000 / GRAMS_PER_LB, 'a 25 kg bag'))
/** Water: 1,000 gallons or a cubic metre. */
export const waterPack = (system: UnitSystem) =>
  system === 'us' ? pack(1000, '1,000 gallons') : pack(1000 / LITRES_PER_GALLON, 'a cubic metre')
