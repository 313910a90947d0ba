import { readLeadingNumber } from './parse-number.ts'
import { findUnit, type QuantityKind, type QuantityUnit } from './quantity-units.ts'

export type ParsedQuantity = { ok: true; value: number; unit: QuantityUnit; kind: QuantityKind } | { ok: false; reason: string }

/** `defaultUnit` is taken when the text gives a bare number; `kinds` are the kinds the caller can use. */
export type ParseQuantityOptions = { defaultUnit?: QuantityUnit; kinds?: readonly QuantityKind[] }

/**
 * Reads a quantity as people write it: "18 gpg", "310 ppm", "1½ ft3", "42 L", "48,000 grain", "48K", "54\"". A bare number needs
 * `defaultUnit`. Refuses, with a sentence, what has no number, an unknown unit, another kind than asked for, or a negative amount.
 */
export function parseQuantity(text: string, options: ParseQuantityOptions = {}): ParsedQuantity {
  const cleaned = text.trim()
  if (cleaned === '') return refused('Nothing is written here; give a number and its unit.')
  const number = readLeadingNumber(cleaned)
  if (number === null) return refused(`"${cleaned}" does not begin with a number; write it like 18 gpg or 310 mg/L.`)
  const { value, words } = takeThousands(number.value, number.rest.trim())
  const found = words === '' ? bareUnit(number.rest, options) : findUnit(words)
  if (found === null && words !== '')
    return refused(`The unit "${words}" in "${cleaned}" is not known; write the number with a unit such as gpg, mg/L, ft3, L or in.`)
  if (found === null) return refused(`"${cleaned}" has no unit; write it with one, for example ${cleaned} gpg or ${cleaned} mg/L.`)
  if (options.kinds && !options.kinds.includes(found.kind)) {
    return refused(`"${cleaned}" is a ${found.kind}, but a ${options.kinds.join(' or ')} is wanted here.`)
  }
  if (value < 0 && found.kind !== 'temperature') return refused(`"${cleaned}" is below zero, which this quantity cannot be.`)
  return { ok: true, value, unit: found.unit, kind: found.kind }
}

/** "48K" and "48k grain" mean thousands of grains. */
function takeThousands(value: number, words: string): { value: number; words: string } {
  const match = /^k\b\.?\s*(.*)$/i.exec(words)
  if (!match) return { value, words }
  const unit = (match[1] ?? '').trim()
  return unit === '' || findUnit(unit)?.unit === 'grain' ? { value: value * 1000, words: unit === '' ? 'grain' : unit } : { value, words }
}

function bareUnit(rest: string, options: ParseQuantityOptions): { unit: QuantityUnit; kind: QuantityKind } | null {
  return rest.trim() === '' && options.defaultUnit !== undefined ? findUnit(options.defaultUnit) : null
}

function refused(reason: string): ParsedQuantity {
  return { ok: false, reason }
}
