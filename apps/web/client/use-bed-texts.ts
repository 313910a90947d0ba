'use client'
import { useDisplay } from '@almanac/ui/display'
import { useWords } from '@almanac/words/use-words'
import { useMemo } from 'react'
import { type BedTexts, bedTexts } from './bed-facts-words.ts'

/** What is said of tanks and beds, in the language and units of whoever looks. */
export function useBedTexts(): BedTexts {
  const [display, words, kinds] = [useDisplay(), useWords('bedFacts'), useWords('resinKind')]
  return useMemo(() => bedTexts(display, words, kinds), [display, words, kinds])
}
