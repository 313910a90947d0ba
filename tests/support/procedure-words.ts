import type { ProcedureWords } from '@almanac/softener/procedure/procedure-words'
import { wordsIn } from '@almanac/words/words-in'

/** What the procedures say in a language. */
export const procedureWords = (locale: string): ProcedureWords => ({
  steps: wordsIn(locale, 'steps'),
  cautions: wordsIn(locale, 'cautions'),
  asks: wordsIn(locale, 'asks'),
  beadCondition: wordsIn(locale, 'beadCondition'),
  kit: wordsIn(locale, 'kit'),
})

export const ENGLISH = procedureWords('en-US')
