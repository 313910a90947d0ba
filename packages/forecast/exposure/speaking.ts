import type { IsoDay } from '@almanac/units/calendar/day-number'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'
import { formatPercent, showFixed, showNumber } from '@almanac/units/format-number'
import type { Key, Words } from '@almanac/words/words'

/** How a forecast is said: days and numbers as a company reads them, sentences in the reader's language. */
export type ForecastSpeaking = { readonly display: DayDisplay; readonly words: Words<'forecast'> }

/** Makes the sentences of a forecast. */
export interface Saying {
  readonly say: (key: Key<'forecast'>, values?: Readonly<Record<string, string>>) => string
  readonly day: (day: IsoDay) => string
  readonly amount: (value: number) => string
  readonly fixed: (value: number, decimals: number) => string
  readonly share: (value: number, decimals?: number) => string
}

/** Where nobody reads the sentences, as in a fit or a study: each is its key, so that none is written a million times. */
const MUTE: Saying = { say: (key) => key, day: String, amount: String, fixed: String, share: String }

export function sayingOf(speaking: ForecastSpeaking | undefined): Saying {
  if (!speaking) return MUTE
  const { display } = speaking
  const words = speaking.words as unknown as (key: string, values?: Readonly<Record<string, string>>) => string
  return {
    say: (key, values) => words(key, values),
    day: (day) => formatDay(day, display),
    amount: (value) => showNumber(value, 2, display) ?? String(value),
    fixed: (value, decimals) => showFixed(value, decimals, display),
    share: (value, decimals = 0) => formatPercent(value, display, decimals),
  }
}
