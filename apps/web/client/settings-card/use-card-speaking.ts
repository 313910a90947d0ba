'use client'
import type { CardSpeaking } from '@almanac/softener/setting/card-types'
import { useWords } from '@almanac/words/use-words'
import { useMemo } from 'react'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** How the card is said, in the language of whoever looks. */
export function useCardSpeaking(): CardSpeaking {
  const { display, words } = useRebedFirm()
  const [card, why, kinds] = [useWords('card'), useWords('cardWhy'), useWords('resinKind')]
  return useMemo(() => ({ display, words, card, why, kinds }), [display, words, card, why, kinds])
}
