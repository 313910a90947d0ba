import type { AmountDisplay } from '@almanac/units/display'
import { formatLengthIn } from '@almanac/units/format'
import { withUnit } from '@almanac/units/format-number'
import { FROM_MEMORY } from '@almanac/units/sourced'
import type { Words } from '@almanac/words/words'
import type { TankShell } from './tank-geometry.ts'

/** Outside diameters of distributor tubes: 13/16 in, 1.05 in (¾ in pipe, 26.7 mm), 1.90 in (1½ in pipe, 48.3 mm); from memory, unverified. */
export const TUBE_OUTSIDE_DIAMETERS_IN = { small: 13 / 16, domestic: 1.05, commercial: 1.9 } as const

/** From this tank diameter the larger tube is usual; from memory, unverified. */
const COMMERCIAL_FROM_IN = 16

/** From this diameter a tank is drawn from by a hub with laterals; between the two the maker's card decides. Common practice, no source. */
const HUB_FROM_IN = 24
const HUB_POSSIBLE_FROM_IN = 16
export const hasHub = (diameterIn: number): boolean => diameterIn >= HUB_FROM_IN
export const mayHaveHub = (diameterIn: number): boolean => diameterIn >= HUB_POSSIBLE_FROM_IN && !hasHub(diameterIn)

/** Whether the larger tube, and so a larger valve, is usual. */
export const hasCommercialTube = (diameterIn: number): boolean => diameterIn >= COMMERCIAL_FROM_IN

/** Outside diameter taken when none is recorded. */
export function usualTubeOutsideDiameterIn(diameterIn: number): number {
  return hasCommercialTube(diameterIn) ? TUBE_OUTSIDE_DIAMETERS_IN.commercial : TUBE_OUTSIDE_DIAMETERS_IN.domestic
}

/** The recorded outside diameter where it can be one, else the usual for this tank; `assumed` says which. */
export function tubeOutsideDiameter(
  recordedIn: number | null | undefined,
  diameterIn: number,
): { outsideDiameterIn: number; assumed: boolean } {
  const recorded = recordedIn != null && recordedIn >= 0.25 && recordedIn < diameterIn / 2
  return recorded
    ? { outsideDiameterIn: recordedIn, assumed: false }
    : { outsideDiameterIn: usualTubeOutsideDiameterIn(diameterIn), assumed: true }
}

export type TubeLength = { lengthIn: number; basis: 'old tube' | 'estimate'; how: string; source: string }

/**
 * Length from the bottom of the basket to the cut. The old tube's length decides where it fitted; otherwise the length from the dimple
 * at the bottom to the rim of the opening is only an estimate, to be marked in the tank itself.
 */
export function tubeLength(shell: TankShell, oldTubeLengthIn: number | null | undefined, words: Words<'kit'>): TubeLength {
  if (oldTubeLengthIn !== null && oldTubeLengthIn !== undefined && believable(oldTubeLengthIn, shell)) {
    return {
      lengthIn: oldTubeLengthIn,
      basis: 'old tube',
      how: words('tubeOld'),
      source: 'measured',
    }
  }
  return {
    lengthIn: shell.heightIn - shell.bottomIn,
    basis: 'estimate',
    how: words('tubeEstimate'),
    source: FROM_MEMORY,
  }
}

/** A recorded length that could stand in this tank; anything else is a slip of entry and not cut to. */
function believable(lengthIn: number, shell: TankShell): boolean {
  return lengthIn > 0.5 * shell.heightIn && lengthIn < shell.heightIn + 6
}

/** A tube's outside diameter as people read it: "1.05 in", "0.813 in", "2.7 cm". */
export const tubeDiameterText = (outsideDiameterIn: number, display: AmountDisplay): string =>
  display.unitSystem === 'us' ? withUnit(outsideDiameterIn, 3, 'in', display) : formatLengthIn(outsideDiameterIn, display)
