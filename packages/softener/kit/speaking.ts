import type { AmountDisplay } from '@almanac/units/display'
import type { Words } from '@almanac/words/words'

/** How a kit and a drawing are said: amounts in the company's units, sentences in the reader's language. */
export type Speaking = { display: AmountDisplay; words: Words<'kit'> }
