import type { ForecastSpeaking } from '@almanac/forecast/exposure/speaking'
import { wordsIn } from '@almanac/words/words-in'

/** How a forecast is said to a reader of this locale. */
export const speakingIn = (locale: string): ForecastSpeaking => ({ display: { locale }, words: wordsIn(locale, 'forecast') })
