import { type CostKind, costRule } from './cost-rules.ts'
import { GRAMS_PER_LB } from './mass.ts'
import { formatMoney, type MoneyDisplay, minorPer } from './money.ts'
import type { UnitSystem } from './unit-system.ts'
import { LITRES_PER_GALLON } from './volume.ts'

/** A price is typed, read and judged for a usual pack, and kept for one unit. `size` is the pack in that unit. */
function pack(kind: CostKind, size: number, label: string) {
  return {
    size,
    label,
    words: (minorPerUnit: number, display: MoneyDisplay) => `${formatMoney(minorPerUnit * size, display)} for ${label}`,
    rule: (currency: string) => costRule(kind, currency),
    /** What is kept, minor units for one unit, for one of the currency for the pack. */
    keptPer: (currency: string) => minorPer(currency) / size,
  }
}

/** Salt: a 40 lb or a 25 kg bag. */
const saltPack = (system: UnitSystem) =>
  system === 'us' ? pack('saltBag', 40, 'a 40 lb bag') : pack('saltBag', 25_000 / GRAMS_PER_LB, 'a 25 kg bag')
/** Water: 1,000 gallons or a cubic metre. */
const waterPack = (system: UnitSystem) =>
  system === 'us' ? pack('waterThousandGal', 1000, '1,000 gallons') : pack('waterCubicMetre', 1000 / LITRES_PER_GALLON, 'a cubic meter')

/** The pack that a figure of the firm's is typed for; null for a figure that is no price. */
export const packOf = (key: string, system: UnitSystem) =>
  key === 'price:salt-per-lb' ? saltPack(system) : key === 'price:water-per-gal' ? waterPack(system) : null
