'use client'
import { formatMoney, minorPer } from '@almanac/units/money'
import { useSession } from './providers.tsx'

/** Money in the firm's currency: as words, as text to type in, and read back to minor units (undefined: no amount). */
export function useMoney() {
  const { currency } = useSession().me.company
  const minor = minorPer(currency)
  return {
    currency,
    words: (amount: number) => formatMoney(amount, currency),
    text: (amount: number | null) => (amount === null ? '' : String(amount / minor)),
    read: (text: string): number | null | undefined => {
      if (text.trim() === '') return null
      const value = Number(text.trim().replace(',', '.'))
      return Number.isFinite(value) && value >= 0 ? Math.round(value * minor) : undefined
    },
  }
}
