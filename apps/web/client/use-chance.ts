'use client'
import { formatPercent } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useLocale } from './use-locale.ts'

/** Writes a chance, 0 to 1, in the reader's language, so that it never reads like never or surely: "under 1%", "58%", "over 99%". */
export function useChance(): (chance: number) => string {
  const display = { locale: useLocale() }
  const words = useWords('common')
  return (chance) => {
    if (chance > 0 && chance < 0.01) return words('underChance', { chance: formatPercent(0.01, display) })
    if (chance > 0.99 && chance < 1) return words('overChance', { chance: formatPercent(0.99, display) })
    return formatPercent(chance, display)
  }
}
