import { depthInStraightIn, levelOfVolumeIn, type TankShell } from './tank-geometry.ts'

/** Bulk density of quartz underbedding, lb/ft³; from memory, unverified. */
export const GRAVEL_BULK_LB_FT3 = 100

/**
 * Where gravel and resin stand in a tank. Heights are inches above the floor.
 * - `bedDepthIn`: resin volume over the tank's cross-section, the depth the trade's tables give.
 * - `freeboardIn`: from the top of the settled bed to the highest point inside the tank, under the neck.
 * - `freeVolumeShare`: volume of the shell not taken by resin and gravel, as a share of the resin's volume; the bed can grow by this
 *   share before it reaches the crown, and no more.
 */
export type BedLevels = {
  gravelVolumeFt3: number
  gravelTopIn: number
  bedTopIn: number
  bedDepthIn: number
  freeboardIn: number
  freeVolumeShare: number
  fits: boolean
}

/** Levels for a fill; volumes and weights must be finite and not negative, `resinFt3` above zero. */
export function bedLevels(shell: TankShell, resinFt3: number, gravelLb: number): BedLevels {
  const gravelVolumeFt3 = gravelLb / GRAVEL_BULK_LB_FT3
  const gravelTopIn = levelOfVolumeIn(shell, gravelVolumeFt3)
  const bedTopIn = levelOfVolumeIn(shell, gravelVolumeFt3 + resinFt3)
  const freeFt3 = shell.volumeFt3 - gravelVolumeFt3 - resinFt3
  return {
    gravelVolumeFt3,
    gravelTopIn,
    bedTopIn,
    bedDepthIn: depthInStraightIn(resinFt3, shell.areaFt2),
    freeboardIn: shell.crownIn - bedTopIn,
    freeVolumeShare: Math.max(0, freeFt3 / resinFt3),
    fits: freeFt3 > 0,
  }
}

/** Height the bed reaches when it has grown by `expansion` (0.5 = 50%), and whether that is above the crown. */
export function expandedBed(
  shell: TankShell,
  levels: BedLevels,
  resinFt3: number,
  expansion: number,
): { topIn: number; overflows: boolean } {
  const grownFt3 = levels.gravelVolumeFt3 + resinFt3 * (1 + expansion)
  return { topIn: levelOfVolumeIn(shell, grownFt3), overflows: grownFt3 >= shell.volumeFt3 }
}
