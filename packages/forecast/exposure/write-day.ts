import type { IsoDay } from '@almanac/units/calendar/day-number'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'

/** How a sentence writes a day. */
export type WriteDay = (day: IsoDay) => string

/** Days as a company reads them; left as they are where nobody reads the sentences, as in a fit or a study. */
export const dayWriter = (display: DayDisplay | undefined): WriteDay => (display ? (day) => formatDay(day, display) : (day) => day)
