import type { DiagnosisSpeaking } from '@almanac/softener/diagnosis/diagnosis-words'
import type { TankSpeaking } from '@almanac/softener/identify/identify-tank'
import type { Speaking } from '@almanac/softener/kit/speaking'
import type { CardSpeaking } from '@almanac/softener/setting/card-types'
import { wordsIn } from '@almanac/words/words-in'

/** How kits and drawings are said to an American company. */
export const SPEAKING: Speaking = { display: { locale: 'en-US', unitSystem: 'us' }, words: wordsIn('en-US', 'kit') }

/** How settings are said to them. */
export const CARD: CardSpeaking = {
  ...{ ...SPEAKING, card: wordsIn('en-US', 'card'), why: wordsIn('en-US', 'cardWhy') },
  kinds: wordsIn('en-US', 'resinKind'),
}

/** How a diagnosis is said to them. */
export const DIAGNOSIS: DiagnosisSpeaking = { display: SPEAKING.display, words: wordsIn('en-US', 'diagnosis') }

/** How the question which tank it is is said to them. */
export const TANK: TankSpeaking = { ...SPEAKING, tank: wordsIn('en-US', 'whichTank') }
