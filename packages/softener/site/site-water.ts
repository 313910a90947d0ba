import { ASSUMED_WATER_F } from '../hydraulics/water-state.ts'

/** How far the water of a year lies on either side of the one temperature known, °F; from memory, unverified. */
export const SEASON_SWING_F = 10

export type SeasonTemperatures = { coldestF: number; warmestF: number; meanF: number; assumed: 'none' | 'swing' | 'all' }

/** Coldest and warmest water of the year. One temperature alone counts as the middle; none at all, 60 °F with the swing about it. */
export function seasonTemperatures(coldestF: number | null, warmestF: number | null): SeasonTemperatures {
  if (coldestF !== null && warmestF !== null && coldestF < warmestF)
    return { coldestF, warmestF, meanF: (coldestF + warmestF) / 2, assumed: 'none' }
  const known = coldestF ?? warmestF
  const meanF = known ?? ASSUMED_WATER_F
  const coldest = Math.max(33, meanF - SEASON_SWING_F)
  return { coldestF: coldest, warmestF: meanF + SEASON_SWING_F, meanF, assumed: known === null ? 'all' : 'swing' }
}
