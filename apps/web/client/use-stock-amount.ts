'use client'
import { oneOf } from '@almanac/records/choices'
import { useDisplay } from '@almanac/ui/display'
import { formatAmount } from '@almanac/units/amount-words'
import { showNumber } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'

/** Units that have words in every language; another is a company's own word, or a sign. */
const SAID = ['bag', 'piece', 'set'] as const

/** Writes an amount of the stores with its unit. */
export function useStockAmount(): (amount: number, unit: string, decimals?: number) => string {
  const display = useDisplay()
  const words = useWords('stores')
  return (amount, unit, decimals = 2) => {
    const said = oneOf(SAID, unit)
    const shown = showNumber(amount, decimals, display)
    return said && shown ? `${shown} ${words(`unit/${said}`, { count: amount })}` : formatAmount(amount, unit, display, decimals)
  }
}
