'use client'
import { moneyRule } from '@almanac/units/amount-kinds'
import { formatMoney, minorDigits, minorPer } from '@almanac/units/money'
import { numberText } from '@almanac/units/read-number'
import { useSession } from './providers.tsx'
import { useLocale } from './use-locale.ts'

/** Money in the company's currency: as words, as text to type over, the rule it is typed by, and in minor units. */
export function useMoney() {
  const { currency } = useSession().me.company
  const locale = useLocale()
  const minor = minorPer(currency)
  return {
    currency,
    rule: moneyRule(currency, minorDigits(currency)),
    words: (amount: number) => formatMoney(amount, { locale, currency }),
    text: (amount: number | null) => (amount === null ? '' : numberText(amount / minor, locale)),
    /** Of an amount in the currency's own unit. */
    minorOf: (value: number) => Math.round(value * minor),
  }
}
