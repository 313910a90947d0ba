'use client'
import { sayAmount } from '@almanac/service-rules/amounts/say-amount'
import type { AmountSaid } from '@almanac/units/amount-said'
import { useWords } from '@almanac/words/use-words'
import { useLocale } from './use-locale.ts'

/** Says what is wrong with an amount in the language of whoever typed it. */
export function useSayAmount(): (said: AmountSaid) => string {
  const [words, names, locale] = [useWords('amount'), useWords('amountName'), useLocale()]
  return (said) => sayAmount(said, { words, names, locale })
}
