import { type AmountKind, type AmountRule, ruleOf } from './amount-kinds.ts'
import type { AmountSaid } from './amount-said.ts'
import { type Judgement, judgeAmount } from './judge-amount.ts'
import { findUnit } from './quantity-units.ts'
import { plainSigns, readLeadingNumber, USUAL_LOCALE } from './read-number.ts'

/** What was typed, as it was: the number with the unit it was typed in, and the text. */
export type EnteredAmount = { value: number; unit: string; text: string }

/**
 * What a typed amount came to. `value` is in the unit the kind is kept in. An odd one is read, with the question that asks it back. An empty
 * field is an answer of its own, never zero.
 */
export type AmountReading =
  | { state: 'empty' }
  | { state: 'read'; value: number; entered: EnteredAmount; odd: AmountSaid | null }
  | { state: 'refused'; said: AmountSaid }

/** `unit` stands beside the field; `locale` is the company's; `judge` knows more than the kind does, as what fits a tank. */
export type ReadAmountOptions = { unit?: string; locale?: string; judge?: (value: number, unit: string) => Judgement }

const refused = (said: AmountSaid): AmountReading => ({ state: 'refused', said })

/**
 * The one reader of typed amounts: "1 1/2", "1½", "1,200", "2,5", "1 200", "18 gpg", "$1,200". A unit typed behind the number counts before the one
 * beside the field. Refuses, with a sentence, what is no number, is in a unit of something else, or cannot be.
 */
export function readAmount(kind: AmountKind | AmountRule, text: string, options: ReadAmountOptions = {}): AmountReading {
  const rule = ruleOf(kind)
  const written = plainSigns(text).trim()
  if (written === '') return { state: 'empty' }
  const beside = options.unit ?? rule.dimension.units[0] ?? ''
  const found = withUnit(rule, written, beside, options.locale ?? USUAL_LOCALE)
  if ('key' in found) return refused(found)
  const { value, unit } = found
  const general = judgeAmount(rule, value, unit)
  const judged = general.state === 'impossible' ? general : worse(general, options.judge?.(value, unit))
  if (judged.state === 'impossible') return refused(judged.said)
  const kept = rule.dimension.convert(value, unit, rule.dimension.units[0] ?? '')
  return {
    state: 'read',
    value: kept,
    entered: { value, unit, text: text.trim() },
    odd: judged.state === 'odd' ? judged.said : null,
  }
}

/** The special judgement says more than the general one, so it goes first where both find fault. */
function worse(general: Judgement, special: Judgement | undefined): Judgement {
  return special && special.state !== 'usual' ? special : general
}

type Found = { value: number; unit: string }

function withUnit(rule: AmountRule, written: string, beside: string, locale: string): Found | AmountSaid {
  const { units } = rule.dimension
  const feet = units.includes('in') ? feetAndInches(written, locale) : null
  if (feet !== null) return { value: rule.dimension.convert(feet, 'in', beside), unit: beside }
  const minutes = units.includes('min') ? minutesIn(written, locale) : null
  if (minutes !== null) return { value: minutes, unit: 'min' }
  const bare = withoutCurrency(rule, written)
  const number = readLeadingNumber(bare, locale)
  if (number === null) return { key: 'notNumber', texts: { text: written, example: rule.example } }
  const rest = number.rest.trim()
  if (rest === '') return tooFine(rule, bare, number.value) ?? { value: number.value, unit: beside }
  const unit = unitNamed(rest, units)
  if (unit !== null) return { value: number.value, unit }
  if (/^\s*[\d.,']/.test(number.rest)) return { key: 'twoWays', texts: { text: written, example: rule.example.replace(',', '') } }
  return units[0] ? { key: 'noUnitBut', texts: { text: rest, units: units.join(', ') } } : { key: 'noUnit', texts: { text: rest } }
}

/** The unit of a list that a text names, in any of its spellings; a counted thing also by its plural. */
function unitNamed(text: string, units: readonly string[]): string | null {
  const plain = text.toLowerCase().replace(/\s+/g, ' ')
  const named = findUnit(text)?.unit
  const own = units.find((unit) => unit !== '' && singular(unit.toLowerCase()) === singular(plain))
  return own ?? units.find((unit) => unit === named) ?? null
}

const singular = (word: string): string => word.replace(/(?<=[a-z]{2}(?:x|ch|sh))es$|(?<=[a-z]{2})s$/, '')

/** 4'6", 4 ft 6 in: feet and inches together, in inches. */
function feetAndInches(written: string, locale: string): number | null {
  const match = /^(\d+)\s*(?:'|’|′|ft\.?|feet|foot)\s*(\d.*?)\s*(?:"|”|″|''|in\.?|inches)?$/i.exec(written)
  const inches = match ? readLeadingNumber(match[2] ?? '', locale) : null
  return match && inches && inches.rest.trim() === '' && inches.value < 12 ? Number(match[1]) * 12 + inches.value : null
}

/** Money without the sign or the code that may stand before or behind it. */
function withoutCurrency(rule: AmountRule, written: string): string {
  if (rule.decimals === undefined) return written
  const code = rule.dimension.units[0] ?? ''
  return written
    .replace(/^([+-]?)\s*\p{Sc}\s*([+-]?)/u, '$1$2')
    .replace(/\s*\p{Sc}$/u, '')
    .replace(new RegExp(`^${code}\\s*|\\s*${code}$`, 'i'), '')
    .trim()
}

/**
 * Where a unit has so many decimals and no more, as money, what has more is asked again and not rounded in silence: "12.345" may as well be
 * 12,345.
 */
function tooFine({ decimals, example }: AmountRule, written: string, value: number): AmountSaid | null {
  if (decimals === undefined) return null
  const behind = /[.,](\d+)$/.exec(written)?.[1]
  const parted = behind !== undefined && Number(written.replace(/[^\d]/g, '')) !== Math.abs(value)
  const minor = value * 10 ** decimals
  if (Math.abs(minor - Math.round(minor)) < 1e-6 && !(parted && behind.length > decimals)) return null
  return { key: 'tooFine', texts: { text: written, example } }
}

/** A time as long as 1 h 30, 1:30, 1.5 h or 90 min, in minutes. */
function minutesIn(written: string, locale: string): number | null {
  const clock =
    /^(\d{1,2}):([0-5]\d)$/.exec(written) ?? /^(\d{1,2})\s*(?:h|hr|hrs|hours?)\s*([0-5]?\d)\s*(?:m|min|minutes)?$/i.exec(written)
  if (clock) return Number(clock[1]) * 60 + Number(clock[2])
  const hours = readLeadingNumber(written, locale)
  return hours !== null && /^(h|hr|hrs|hours?)$/i.test(hours.rest.trim()) ? hours.value * 60 : null
}
