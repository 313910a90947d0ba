import { COMMON_PRACTICE, FROM_MEMORY } from '@almanac/units/sourced'
import type { Words } from '@almanac/words/words'

/** Where a figure is from, in the reader's language where it is one of the usual words; a book, a standard or a company's own note as it was written. */
export function sourceWords(source: string, words: Words<'kit'>): string {
  if (source === COMMON_PRACTICE) return words('source/practice')
  return source === FROM_MEMORY ? words('source/memory') : source
}
