import { type AmountRule, moneyRule } from './amount-kinds.ts'
import type { AmountName } from './amount-names.ts'
import { minorDigits, minorPer } from './money.ts'

/** How many of a currency buy about what a dollar, a euro or a pound does: to one figure, only to tell a slip from a price. */
const TO_THE_DOLLAR: Readonly<Record<string, number>> = { MXN: 20 }
const WITHOUT_MINOR_UNITS = 100
const MOST_MINOR = 2_000_000_000

type Cost = { name: AmountName; usual: readonly [number, number]; most?: number }

/** What prices and costs mostly are, in dollars: common practice, no source. What lies outside is asked back, and stands with a reason. */
const COSTS = {
  saltBag: { name: 'saltBag', usual: [2, 80], most: 10_000 },
  waterThousandGal: { name: 'waterThousandGal', usual: [0.5, 100], most: 10_000 },
  waterCubicMetre: { name: 'waterCubicMetre', usual: [0.1, 30], most: 3000 },
  plannedRebedMinor: { name: 'plannedRebed', usual: [100, 20_000] },
  failureMinor: { name: 'failedBed', usual: [20, 50_000] },
  beadsMinor: { name: 'beads', usual: [20, 50_000] },
  overtimeMinorPerHour: { name: 'overtime', usual: [5, 500] },
} satisfies Record<string, Cost>

export type CostKind = keyof typeof COSTS

/** Whether a setting of the firm's is a cost with a rule here. */
export const isCost = (name: string): name is CostKind => Object.hasOwn(COSTS, name)

/** What a price or a cost may be, in the currency's own unit. */
export function costRule(kind: CostKind, currency: string): AmountRule {
  const { name, usual, most }: Cost = COSTS[kind]
  const worth = TO_THE_DOLLAR[currency] ?? (minorDigits(currency) === 0 ? WITHOUT_MINOR_UNITS : 1)
  const money = moneyRule(currency, minorDigits(currency), most === undefined ? MOST_MINOR / minorPer(currency) : most * worth)
  return { ...money, name, usual: [usual[0] * worth, usual[1] * worth] }
}
