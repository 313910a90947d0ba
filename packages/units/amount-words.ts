/** Units that are measured, not counted: they never take an s. */
const MEASURED = new Set(['lb', 'kg', 'g', 'oz', 'fl oz', 'gal', 'qt', 'pt', 'L', 'mL', 'ft³', 'ft3', 'in', 'ft', 'm', 'mm', 'cm'])

/** The unit as it follows an amount: "4 bags", "1 bag", "½ bag", "300 lb". The unit is a word or sign of the firm's stores. */
export function unitAfter(amount: number, unit: string): string {
  const one = Math.abs(amount) > 0 && Math.abs(amount) <= 1
  if (one || MEASURED.has(unit) || !/[a-z]{2}$/.test(unit) || unit.endsWith('s')) return unit
  return /(x|ch|sh)$/.test(unit) ? `${unit}es` : `${unit}s`
}
