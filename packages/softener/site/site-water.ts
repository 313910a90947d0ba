import { ASSUMED_WATER_F } from '../hydraulics/water-state.ts'

/** How far the water of a year lies on either side of the one temperature known, °F; from memory, unverified. */
export const SEASON_SWING_F = 10

export type SeasonTemperatures = { coldestF: number; warmestF: number; meanF: number; assumed: 'none' | 'swing' | 'all' }

/**
 * Coldest and warmest water of the year, °F. What is not known of the two is taken from the usual temperature, or from the other, by the swing; none
 * at all, 60 °F with the swing about it. Never below 33.
 */
export function seasonTemperatures(coldestF: number | null, warmestF: number | null, usualF: number | null): SeasonTemperatures {
  if (coldestF !== null && warmestF !== null) return { coldestF, warmestF, meanF: (coldestF + warmestF) / 2, assumed: 'none' }
  const middle = usualF ?? (coldestF !== null ? coldestF + SEASON_SWING_F : warmestF !== null ? warmestF - SEASON_SWING_F : ASSUMED_WATER_F)
  const cold = coldestF ?? Math.max(33, Math.min(middle - SEASON_SWING_F, warmestF ?? middle))
  const warm = warmestF ?? Math.max(cold, middle + SEASON_SWING_F)
  const none = coldestF === null && warmestF === null && usualF === null
  return { coldestF: cold, warmestF: warm, meanF: (cold + warm) / 2, assumed: none ? 'all' : 'swing' }
}
