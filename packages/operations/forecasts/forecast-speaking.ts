import type { ForecastSpeaking } from '@almanac/forecast/exposure/speaking'
import type { DayDisplay } from '@almanac/units/format-day'
import { wordsIn } from '@almanac/words/words-in'

/** How a forecast is said to whoever reads in this locale. */
export const forecastSpeaking = (display: DayDisplay): ForecastSpeaking => ({ display, words: wordsIn(display.locale, 'forecast') })
