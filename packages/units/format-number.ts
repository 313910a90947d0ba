import type { Display } from './display.ts'
import { regionLocale } from './region-locale.ts'

/** What a screen shows instead of a number that is missing or not finite. */
export const NOT_KNOWN = 'not known'

/** What writing a bare number takes of the company's display. */
export type NumberDisplay = Pick<Display, 'locale'>

const formatters = new Map<string, Intl.NumberFormat>()

/** The platform's formatter for a locale and options, made once: making one takes a hundred times as long as using it. */
export function numberFormat(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${locale} ${JSON.stringify(options)}`
  let format = formatters.get(key)
  if (!format) {
    format = new Intl.NumberFormat(regionLocale(locale) ?? locale, options)
    formatters.set(key, format)
  }
  return format
}

/** Engines differ in the narrow space that some locales part thousands with; papers have no glyph for it. */
export const plainSpaces = (text: string): string => text.replace(/\u202f/g, '\u00a0')

/** What rounds to nothing is nothing: no "-0". */
const withoutMinusZero = (value: number, decimals: number): number => (Math.abs(value) < 0.5 * 10 ** -decimals ? 0 : value)

/** A number as shown: thousands and decimals parted as the locale does, at most `decimals` places, no trailing zeros; null when it is missing or not finite. */
export function showNumber(value: number | null | undefined, decimals: number, display: NumberDisplay): string | null {
  if (value === null || value === undefined || !Number.isFinite(value)) return null
  const format = numberFormat(display.locale, { maximumFractionDigits: decimals })
  return plainSpaces(format.format(withoutMinusZero(value, decimals)))
}

/** A number with exactly so many places, for columns that are read downwards: 7.0, 12.5; "not known" when it is missing or not finite. */
export function showFixed(value: number | null | undefined, decimals: number, display: NumberDisplay): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return NOT_KNOWN
  const format = numberFormat(display.locale, { minimumFractionDigits: decimals, maximumFractionDigits: decimals })
  return plainSpaces(format.format(withoutMinusZero(value, decimals)))
}

/** A count or an estimate without decimals: "1,500"; "not known" when it is missing or not finite. */
export const showWhole = (value: number | null | undefined, display: NumberDisplay): string => showNumber(value, 0, display) ?? NOT_KNOWN

/** Value and unit, or "not known". */
export function withUnit(value: number | null | undefined, decimals: number, unit: string, display: NumberDisplay): string {
  const text = showNumber(value, decimals, display)
  return text === null ? NOT_KNOWN : `${text} ${unit}`
}

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'] as const

/** A number rounded to the nearest eighth, written as a rule is read: 53⅞, ½, 12. */
export const showEighths = (value: number, display: NumberDisplay): string => eighthsWith(value, (whole) => showWhole(whole, display))

/** The same inside a name, where no locale parts thousands: "1½ ft³ bag". */
export const nameEighths = (value: number): string => eighthsWith(value, String)

function eighthsWith(value: number, show: (whole: number) => string): string {
  const eighths = Math.round(Math.abs(value) * 8)
  const whole = Math.floor(eighths / 8)
  const part = EIGHTHS[eighths % 8] ?? ''
  const sign = value < 0 && eighths > 0 ? '-' : ''
  return whole === 0 && part !== '' ? `${sign}${part}` : `${sign}${show(whole)}${part}`
}

/** A share of one as a percentage in the locale's form, at most `decimals` places: 0.28 is "28%" in en-US, "28 %" in de-DE, with a no-break space. */
export function formatPercent(share: number | null | undefined, display: NumberDisplay, decimals = 0): string {
  if (share === null || share === undefined || !Number.isFinite(share)) return NOT_KNOWN
  const format = numberFormat(display.locale, { style: 'percent', maximumFractionDigits: decimals })
  return plainSpaces(format.format(withoutMinusZero(share, decimals + 2)))
}

/** A count inside an English sentence that is made where no company is known: "1,500". */
export const countInSentence = (count: number): string => showWhole(count, { locale: 'en' })

/** A chance as a percentage that never reads like never or surely: "under 1%", "58%", "over 99%". */
export function formatChance(chance: number | null | undefined, display: NumberDisplay): string {
  if (typeof chance === 'number' && chance > 0 && chance < 0.01) return `under ${formatPercent(0.01, display)}`
  if (typeof chance === 'number' && chance > 0.99 && chance < 1) return `over ${formatPercent(0.99, display)}`
  return formatPercent(chance, display)
}

/** An entered number as quoted back in a sentence about it; what is not finite is called "something that is no number". */
export function quoteNumber(value: number): string {
  return Number.isFinite(value) ? String(value) : 'something that is no number'
}
