'use client'
import { useDisplay } from '@almanac/ui/display'
import { useWords } from '@almanac/words/use-words'
import { sourceText } from './source-text.ts'

/** Writes where a fact came from in the language of whoever looks. */
export function useSourceText(): (source: string) => string {
  const [display, words] = [useDisplay(), useWords('factSource')]
  return (source) => sourceText(source, display, words)
}
