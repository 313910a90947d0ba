import { regionLocale } from './region-locale.ts'
/** `rest` is what stands after the number. */
export type LeadingNumber = { value: number; rest: string }

/** The locale by which a number is read where nobody says another. */
export const USUAL_LOCALE = 'en-US'

const FRACTION_CHARS: Record<string, number> = {
  '⅛': 1 / 8,
  '¼': 1 / 4,
  '⅓': 1 / 3,
  '⅜': 3 / 8,
  '½': 1 / 2,
  '⅝': 5 / 8,
  '⅔': 2 / 3,
  '¾': 3 / 4,
  '⅞': 7 / 8,
}

const MIXED = /^([+-]?)(\d+)?[\s-]*([⅛¼⅓⅜½⅝⅔¾⅞])/
const FRACTION = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\s*[/⁄]\s*(\d+)(?![\d/])/
const PLAIN = /^[+-]?(?:\d[\d.,' ]*\d|\d|[.,]\d+)(?:e[+-]?\d+)?/i

/** No-break, narrow, thin and figure spaces as plain ones, the minus sign and dashes as a hyphen, and a typographic apostrophe as a straight one. */
export const plainSigns = (text: string): string =>
  text
    .replace(/[\u00a0\u2000-\u200a\u202f\u205f\u3000]/g, ' ')
    .replace(/[\u2212\u2010-\u2013\ufe63\uff0d]/g, '-')
    .replace(/\u2019(?=\d{3})/g, "'")

const decimals = new Map<string, '.' | ','>()

/** What parts whole from decimals in a locale (BCP 47): a comma or a point; a locale that Intl does not know reads like the usual one. */
function decimalSign(locale: string): '.' | ',' {
  const known = decimals.get(locale)
  if (known) return known
  const sign =
    isLocale(locale) && /,/.test(new Intl.NumberFormat(regionLocale(locale) ?? locale, { numberingSystem: 'latn' }).format(1.5)) ? ',' : '.'
  decimals.set(locale, sign)
  return sign
}

function isLocale(locale: string): boolean {
  try {
    return Intl.getCanonicalLocales(locale).length === 1
  } catch {
    return false
  }
}

/**
 * Reads the number at the start of a text: 1.5, 1½, "1 1/2", "48,000", "48 000", "2,5", "−3". Where one comma or point before exactly three
 * digits could part thousands or decimals ("1,200", "1.200"), the locale decides; everything else can be read in one way only. Null when the text
 * does not begin with a number.
 */
export function readLeadingNumber(text: string, locale = USUAL_LOCALE): LeadingNumber | null {
  const trimmed = plainSigns(text).trim()
  const mixed = MIXED.exec(trimmed)
  if (mixed) return signed(mixed[1], Number(mixed[2] ?? 0) + (FRACTION_CHARS[mixed[3] ?? ''] ?? 0), trimmed.slice(mixed[0].length))
  const fraction = FRACTION.exec(trimmed)
  if (fraction) {
    const bottom = Number(fraction[4])
    if (bottom === 0) return null
    return signed(fraction[1], Number(fraction[2] ?? 0) + Number(fraction[3]) / bottom, trimmed.slice(fraction[0].length))
  }
  return readPlain(trimmed, locale)
}

/** Reads a text that is a number and nothing else, as `readLeadingNumber` does; null for any other. */
export function readNumber(text: string, locale = USUAL_LOCALE): number | null {
  const found = readLeadingNumber(text, locale)
  return found === null || found.rest.trim() !== '' ? null : found.value
}

/** A number as text to type over: as `readNumber` reads it in that locale, at most so many decimals, thousands together. */
export function numberText(value: number, locale = USUAL_LOCALE, decimals = 6): string {
  return String(Number(value.toFixed(decimals))).replace('.', decimalSign(locale))
}

const signed = (sign: string | undefined, value: number, rest: string): LeadingNumber => ({ value: sign === '-' ? -value : value, rest })

function readPlain(text: string, locale: string): LeadingNumber | null {
  const match = PLAIN.exec(text)
  if (!match) return null
  const written = match[0]
  const digits = withPoint(written.trim(), decimalSign(locale))
  const value = digits === null ? Number.NaN : Number(digits)
  return Number.isFinite(value) ? { value, rest: text.slice(written.length) } : null
}

/** The number as code writes it, or null where its separators fit no way of writing numbers. */
function withPoint(written: string, decimal: '.' | ','): string | null {
  const oneOrOther = /^[+-]?[1-9]\d{0,2}([.,])\d{3}$/.exec(written)
  if (oneOrOther) return oneOrOther[1] === decimal ? written.replace(',', '.') : written.replace(/[.,]/, '')
  if (/^[+-]?[1-9]\d{0,2}([,. '])\d{3}(\1\d{3})*$/.test(written)) return written.replace(/[,. ']/g, '')
  if (/^[+-]?[1-9]\d{0,2}([, '])\d{3}(\1\d{3})*\.\d+$/.test(written)) return written.replace(/[, ']/g, '')
  if (/^[+-]?[1-9]\d{0,2}([. '])\d{3}(\1\d{3})*,\d+$/.test(written)) return written.replace(/[. ']/g, '').replace(',', '.')
  if (/^[+-]?\d*,\d+$/.test(written)) return written.replace(',', '.')
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(written)) return written
  return null
}
