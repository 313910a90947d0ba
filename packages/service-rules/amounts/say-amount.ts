import type { AmountSaid } from '@almanac/units/amount-said'
import { showNumber } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'

/** What the sentences about amounts are said in; `locale` writes their numbers. */
export type AmountWords = { words: Words<'amount'>; names: Words<'amountName'>; locale: string }

const SIGNS: Record<string, string> = { ft3: 'ft³', 'ug/L': 'µg/L', dH: '°dH', fH: '°fH', F: '°F', C: '°C' }
/** Signs that stand at the number without a space. */
const CLOSE = new Set(['', '°', '%'])

/** A value with its unit as the sentences say it: "99 gpg", "7.4"; three figures of what is below one. */
function amountText({ value, unit }: { value: number; unit: string }, locale: string): string {
  const small = Math.abs(value) < 1 && value !== 0
  const rounded = small ? Number(value.toPrecision(3)) : value
  const number = showNumber(rounded, small ? 20 : 2, { locale }) ?? ''
  return CLOSE.has(unit) ? `${number}${unit}` : `${number} ${SIGNS[unit] ?? unit}`
}

/** A sentence about an amount in somebody's language: what is wrong with it, and what to do. */
export function sayAmount({ key, name, amounts = {}, texts = {}, after, ask }: AmountSaid, { words, names, locale }: AmountWords): string {
  const values: Record<string, string> = { ...texts }
  if (name) values.name = names(name)
  for (const [place, amount] of Object.entries(amounts)) values[place] = amountText(amount, locale)
  // Each key is given what its English message names; a test says every one.
  const say = words as unknown as (key: string, values?: Record<string, string>) => string
  return [say(key, values), after && words(after), ask && words('ask')].filter(Boolean).join(' ')
}
