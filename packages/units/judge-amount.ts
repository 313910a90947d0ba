import { type AmountKind, type AmountRule, ruleOf } from './amount-kinds.ts'
import { showNumber } from './format-number.ts'

/** How likely an amount is. What is odd may be right: `sentence` asks it back. What is impossible is refused. */
export type Judgement = { state: 'usual' } | { state: 'odd' | 'impossible'; sentence: string }

export const USUAL: Judgement = { state: 'usual' }
const ASK = 'Is it right? Correct it, or say why it is so.'

/** An odd amount, asked back. `what` is said before the question. */
export const odd = (what: string): Judgement => ({ state: 'odd', sentence: `${what} ${ASK}` })
export const impossible = (sentence: string): Judgement => ({ state: 'impossible', sentence })

const shown = (value: number): string =>
  (Math.abs(value) >= 1 || value === 0 ? showNumber(value, 2, { locale: 'en' }) : String(Number(value.toPrecision(3)))) ?? ''

/** A value with its unit as the sentences say it: "99 gpg", "7.4". */
const amountWords = (value: number, unit: string): string =>
  unit === '' || unit === '°' || unit === '%' ? `${shown(value)}${unit}` : `${shown(value)} ${signOf(unit)}`

const SIGNS: Record<string, string> = { ft3: 'ft³', 'ug/L': 'µg/L', dH: '°dH', fH: '°fH', F: '°F', C: '°C' }
const signOf = (unit: string): string => SIGNS[unit] ?? unit

/**
 * Whether an amount can be, and is usual. `value` is in `unit`, one of the kind's units; the sentences speak that unit, since it is the one people
 * typed. Forms and the server ask this alike.
 */
export function judgeAmount(kind: AmountKind | AmountRule, value: number, unit: string): Judgement {
  const { name, dimension, least, most, usual, whole, above } = ruleOf(kind)
  const base = dimension.units[0] ?? ''
  const kept = dimension.convert(value, unit, base)
  if (!Number.isFinite(kept)) return impossible(`${name} must be a number.`)
  // A bound in another unit than its own is told as near as anyone needs it.
  const inUnit = (bound: number) => (unit === base ? bound : Number(dimension.convert(bound, base, unit).toPrecision(3)))
  const words = amountWords(value, unit)
  if (kept > most)
    return impossible(`${name} of ${words} can’t be right: the most is ${amountWords(inUnit(most), unit)}. Check the number and its unit.`)
  if (kept < least && least === 0) return impossible(`${name} can’t be below zero, and ${words} is. Check the sign.`)
  if (kept < least)
    return impossible(
      `${name} of ${words} can’t be right: the least is ${amountWords(inUnit(least), unit)}. Check the number and its unit.`,
    )
  if (above && kept <= least) return impossible(`${name} must be more than ${amountWords(inUnit(least), unit)}.`)
  if (whole && !Number.isInteger(value)) return impossible(`${name} is a whole number, such as ${ruleOf(kind).example}.`)
  if (!usual || (kept >= usual[0] && kept <= usual[1])) return USUAL
  return odd(`${words} is unusual: mostly it’s ${amountWords(inUnit(usual[0]), unit)} to ${amountWords(inUnit(usual[1]), unit)}.`)
}
