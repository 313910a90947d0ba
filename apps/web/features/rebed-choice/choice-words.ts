import type { Spread } from '@almanac/softener/choice/spread'

const digitsOf = (currency: string) =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2

/** Minor units as money without cents, as estimates are told: "$64". */
export function roundMoney(minor: number, currency: string): string {
  const format = new Intl.NumberFormat('en-US', { style: 'currency', currency, maximumFractionDigits: 0 })
  return format.format(minor / 10 ** digitsOf(currency))
}

/** Money as typed, "1,800" or "1800.50", in minor units; null where it is empty or no amount. */
export function minorTyped(text: string, currency: string): number | null {
  const value = Number(text.replaceAll(',', '').trim())
  return text.trim() === '' || !Number.isFinite(value) || value < 0 || value > 1e7 ? null : Math.round(value * 10 ** digitsOf(currency))
}

/** "$52 to $98 a year". */
export const spreadMoney = (spread: Spread, currency: string) =>
  `${roundMoney(spread.low, currency)} to ${roundMoney(spread.high, currency)} a year`

/** "8 to 17 years". */
export const spreadYears = (spread: Spread) => `${Math.round(spread.low)} to ${Math.round(spread.high)} years`

/** A chance in words one can weigh: "in 7 of 10 cases". */
export function oftenWords(chance: number): string {
  const tenths = Math.round(chance * 10)
  if (tenths <= 0) return 'hardly ever'
  return tenths >= 10 ? 'nearly always' : `in ${tenths} of 10 cases`
}
