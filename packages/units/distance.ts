import type { AmountDisplay } from './display.ts'
import { NOT_KNOWN, withUnit } from './format-number.ts'

/** Kilometres in one statute mile, exact (international mile, 1959). */
export const KM_PER_MILE = 1.609344

/** A road distance: one decimal below ten, else whole miles or kilometres. */
export function formatMiles(miles: number | null | undefined, display: AmountDisplay): string {
  if (miles === null || miles === undefined || !Number.isFinite(miles)) return NOT_KNOWN
  const value = display.unitSystem === 'us' ? miles : miles * KM_PER_MILE
  return withUnit(value, value < 10 ? 1 : 0, display.unitSystem === 'us' ? 'mi' : 'km', display)
}
