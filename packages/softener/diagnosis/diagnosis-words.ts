import type { AmountDisplay } from '@almanac/units/display'
import type { Words } from '@almanac/words/words'
import type { CheckId } from './check-types.ts'

export type DiagnosisWords = Words<'diagnosis'>

/** How a diagnosis is said: amounts in the company’s units, sentences in the reader's language. */
export type DiagnosisSpeaking = { display: AmountDisplay; words: DiagnosisWords }

/** An answer in words. A test says every answer of every check, so a key that is not there turns it red. */
export const answerWords = (check: CheckId, value: string, words: DiagnosisWords): string =>
  (words as (key: string) => string)(`${check}/${value}`)
