import type { AmountDisplay } from '@almanac/units/display'
import { formatTankSize } from '@almanac/units/format'
import { canBeTank, tankShell } from './tank-geometry.ts'

/** What a tank of a nominal size holds, in ft³, and how high it is, for judging what is said to go into it; null where its size is not known or cannot be. */
export function tankRoom(diameterIn: number | null, heightIn: number | null, display: AmountDisplay) {
  if (diameterIn === null || heightIn === null || !canBeTank(diameterIn, heightIn)) return null
  return {
    words: formatTankSize(diameterIn, heightIn, display),
    volumeFt3: tankShell(diameterIn, heightIn).volumeFt3,
    heightIn,
  }
}
