import { formatDuration } from '@almanac/units/format-clock'
import type { NumberDisplay } from '@almanac/units/format-number'

const LENGTHS = [10, 20, 30, 45, 60, 75, 90, 105, 120, 150, 180, 210, 240, 300, 360, 420, 480, 600]
const MOST_PEOPLE = 6

/** Lengths on site to choose from, `minutes` among them whatever it is. */
export function lengthChoices(minutes: number | null, display: NumberDisplay) {
  const all = [...new Set([...LENGTHS, ...(minutes === null ? [] : [minutes])])].sort((a, b) => a - b)
  return all.map((one) => ({ value: String(one), label: formatDuration(one, display) }))
}

/** Numbers of people to choose from. */
export const peopleChoices = Array.from({ length: MOST_PEOPLE }, (_, n) => ({ value: String(n + 1), label: String(n + 1) }))
