import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import type { AmountDisplay } from '@almanac/units/display'
import { wordsIn } from '@almanac/words/words-in'

/** A company as its kits are worked out: its figures and how it reads amounts, with the sentences in the language of its locale. */
export const rebedFirm = (figures: FirmFigures, display: AmountDisplay): RebedFirm => ({
  figures,
  display,
  words: wordsIn(display.locale, 'kit'),
})
