import { type NumberDisplay, withUnit } from './format-number.ts'

/** Units that are measured, not counted: they never take an s. */
const MEASURED = new Set(['lb', 'kg', 'g', 'oz', 'fl oz', 'gal', 'qt', 'pt', 'L', 'mL', 'ft³', 'ft3', 'in', 'ft', 'm', 'mm', 'cm'])

/** The unit as it follows an amount. */
function unitAfter(amount: number, unit: string): string {
  const one = Math.abs(amount) > 0 && Math.abs(amount) <= 1
  if (one || MEASURED.has(unit) || !/[a-z]{2}$/.test(unit) || unit.endsWith('s')) return unit
  return /(x|ch|sh)$/.test(unit) ? `${unit}es` : `${unit}s`
}

/** An amount with its unit, a word or sign of the firm's stores: "4 bags", "1 bag", "0.5 bag", "1,300 lb"; "not known" when it is not finite. */
export const formatAmount = (amount: number, unit: string, display: NumberDisplay, decimals = 2): string =>
  withUnit(amount, decimals, unitAfter(amount, unit), display)
