import { localeName } from '@almanac/units/display'
import { formatClockTime } from '@almanac/units/format-clock'
import { formatDay } from '@almanac/units/format-day'
import { showNumber } from '@almanac/units/format-number'

/** A locale by its name and by how it writes: "American English: 1,234.5 · Dec 3, 2026 · 2:30 PM". */
export function localeWords(locale: string): string {
  const name = localeName(locale)
  const display = { locale, timeZone: 'UTC' }
  return `${name}: ${showNumber(1234.5, 1, display)} · ${formatDay('2026-12-03', display)} · ${formatClockTime('14:30', display)}`
}
