import type { Spread } from '@almanac/softener/choice/spread'

/** "8 to 17 years". */
export const spreadYears = (spread: Spread) => `${Math.round(spread.low)} to ${Math.round(spread.high)} years`

/** A chance in words one can weigh: "in 7 of 10 cases". */
export function oftenWords(chance: number): string {
  const tenths = Math.round(chance * 10)
  if (tenths <= 0) return 'hardly ever'
  return tenths >= 10 ? 'nearly always' : `in ${tenths} of 10 cases`
}
