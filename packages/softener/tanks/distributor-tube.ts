import { FROM_MEMORY } from '@almanac/units/sourced'
import type { TankShell } from './tank-geometry.ts'

/** Outside diameters of distributor tubes: 13/16 in, 1.05 in (¾ in pipe, 26.7 mm), 1.90 in (1½ in pipe, 48.3 mm); from memory, unverified. */
export const TUBE_OUTSIDE_DIAMETERS_IN = { small: 13 / 16, domestic: 1.05, commercial: 1.9 } as const

/** From this tank diameter the larger tube is usual; from memory, unverified. */
const COMMERCIAL_FROM_IN = 16

/** Outside diameter taken when none is recorded. */
export function usualTubeOutsideDiameterIn(diameterIn: number): number {
  return diameterIn >= COMMERCIAL_FROM_IN ? TUBE_OUTSIDE_DIAMETERS_IN.commercial : TUBE_OUTSIDE_DIAMETERS_IN.domestic
}

export type TubeLength = { lengthIn: number; basis: 'old tube' | 'estimate'; how: string; source: string }

/**
 * Length from the bottom of the basket to the cut. The old tube's length decides where it fitted; otherwise the length from the dimple
 * at the bottom to the rim of the opening is only an estimate, to be marked in the tank itself.
 */
export function tubeLength(shell: TankShell, oldTubeLengthIn: number | null | undefined): TubeLength {
  if (oldTubeLengthIn !== null && oldTubeLengthIn !== undefined && oldTubeLengthIn > 0) {
    return {
      lengthIn: oldTubeLengthIn,
      basis: 'old tube',
      how: 'Cut to the length of the old tube with its basket, if that one fitted and the new basket matches.',
      source: 'measured',
    }
  }
  return {
    lengthIn: shell.heightIn - shell.bottomIn,
    basis: 'estimate',
    how: 'Estimate only. Stand the new tube in the dimple at the bottom, mark it flush with the rim of the opening (some valves want an offset: see the valve), cut square and deburr.',
    source: FROM_MEMORY,
  }
}
