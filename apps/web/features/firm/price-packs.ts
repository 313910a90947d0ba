import { GRAMS_PER_LB } from '@almanac/units/mass'
import { formatMoney, type MoneyDisplay } from '@almanac/units/money'
import type { UnitSystem } from '@almanac/units/unit-system'
import { LITRES_PER_GALLON } from '@almanac/units/volume'

/** A price is typed and read for a usual pack, and kept for one unit. `size` is the pack in that unit. */
function pack(size: number, label: string) {
  return {
    size,
    label,
    words: (minorPerUnit: number, display: MoneyDisplay) => `${formatMoney(minorPerUnit * size, display)} for ${label}`,
  }
}

/** Salt: a 40 lb or a 25 kg bag. */
export const saltPack = (system: UnitSystem) => (system === 'us' ? pack(40, 'a 40 lb bag') : pack(25_000 / GRAMS_PER_LB, 'a 25 kg bag'))
/** Water: 1,000 gallons or a cubic metre. */
export const waterPack = (system: UnitSystem) =>
  system === 'us' ? pack(1000, '1,000 gallons') : pack(1000 / LITRES_PER_GALLON, 'a cubic metre')
