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

/** `rest` is what stands after the number. */
export type LeadingNumber = { value: number; rest: string }

const MIXED = /^([+-]?\d+)?\s*([⅛¼⅓⅜½⅝⅔¾⅞])/
const FRACTION = /^(?:([+-]?\d+)(?:\s+|-))?(\d+)\s*[/⁄]\s*(\d+)(?![\d/])/
const PLAIN = /^[+-]?(?:\d[\d.,' ]*\d|\d|[.,]\d+)(?:e[+-]?\d+)?/i

/**
 * Reads the number at the start of a text: 1.5, 1½, "1 1/2", "48,000", "48 000", "2,5". A comma before exactly three digits separates
 * thousands (unless the number begins with 0); any other single comma is a decimal comma. Null when there is no number.
 */
export function readLeadingNumber(text: string): LeadingNumber | null {
  const trimmed = text.trim()
  const mixed = MIXED.exec(trimmed)
  if (mixed) {
    const whole = mixed[1] === undefined ? 0 : Number(mixed[1])
    const part = FRACTION_CHARS[mixed[2] ?? ''] ?? 0
    return { value: whole < 0 ? whole - part : whole + part, rest: trimmed.slice(mixed[0].length) }
  }
  const fraction = FRACTION.exec(trimmed)
  if (fraction) {
    const bottom = Number(fraction[3])
    if (bottom === 0) return null
    const whole = fraction[1] === undefined ? 0 : Number(fraction[1])
    const part = Number(fraction[2]) / bottom
    return { value: whole < 0 ? whole - part : whole + part, rest: trimmed.slice(fraction[0].length) }
  }
  return readPlain(trimmed)
}

function readPlain(text: string): LeadingNumber | null {
  const match = PLAIN.exec(text)
  if (!match) return null
  const written = match[0]
  const rest = text.slice(written.length)
  const digits = normaliseSeparators(written)
  const value = digits === null ? Number.NaN : Number(digits)
  return Number.isFinite(value) ? { value, rest } : null
}

function normaliseSeparators(written: string): string | null {
  const text = written.trim()
  if (/^[+-]?[1-9]\d{0,2}([, '.])\d{3}(\1\d{3})*$/.test(text) && !/^[+-]?\d{1,3}\.\d{3}$/.test(text)) return text.replace(/[, '.]/g, '')
  if (/^[+-]?[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(text)) return text.replace(/,/g, '')
  if (/^[+-]?[1-9]\d{0,2}([. ']\d{3})+,\d+$/.test(text)) return text.replace(/[. ']/g, '').replace(',', '.')
  if (/^[+-]?\d*,\d+$/.test(text)) return text.replace(',', '.')
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text)) return text
  return null
}
