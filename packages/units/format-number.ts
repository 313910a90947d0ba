/** What a screen shows instead of a number that is missing or not finite. */
export const NOT_KNOWN = 'not known'

/** A number as shown: thousands separated, at most `decimals` places, no trailing zeros; null when it is missing or not finite. */
export function showNumber(value: number | null | undefined, decimals: number): string | null {
  if (value === null || value === undefined || !Number.isFinite(value)) return null
  const fixed = value.toFixed(decimals)
  const [whole = '0', part = ''] = fixed.split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  const trimmed = part.replace(/0+$/, '')
  const text = trimmed === '' ? grouped : `${grouped}.${trimmed}`
  return text === '-0' ? '0' : text
}

/** Value and unit, or "not known". */
export function withUnit(value: number | null | undefined, decimals: number, unit: string): string {
  const text = showNumber(value, decimals)
  return text === null ? NOT_KNOWN : `${text} ${unit}`
}

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'] as const

/** A number rounded to the nearest eighth, written as a rule is read: 53⅞, ½, 12. */
export function showEighths(value: number): string {
  const eighths = Math.round(Math.abs(value) * 8)
  const whole = Math.floor(eighths / 8)
  const part = EIGHTHS[eighths % 8] ?? ''
  const sign = value < 0 && eighths > 0 ? '-' : ''
  if (whole === 0 && part !== '') return `${sign}${part}`
  return `${sign}${showNumber(whole, 0) ?? ''}${part}`
}

/** An entered number as quoted back in a sentence about it; what is not finite is called "something that is no number". */
export function quoteNumber(value: number): string {
  return Number.isFinite(value) ? String(value) : 'something that is no number'
}
