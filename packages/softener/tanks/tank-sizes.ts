import { COMMON_PRACTICE } from '@almanac/units/sourced'

/** A range with the value to start from when nothing better is known. */
export type UsualRange = { readonly min: number; readonly usual: number; readonly max: number }

/** A mineral tank sold under a nominal size. Area, volume and bed depth are not stored: they follow from the geometry. */
export type TankSize = {
  readonly diameterIn: number
  readonly heightIn: number
  readonly resinFt3: UsualRange
  readonly gravelLb: UsualRange
  readonly openingsIn: readonly number[]
  readonly source: string
}

const size = (
  diameterIn: number,
  heightIn: number,
  resin: [number, number, number],
  gravel: [number, number, number],
  openingsIn: number[],
): TankSize => ({
  diameterIn,
  heightIn,
  resinFt3: { min: resin[0], usual: resin[1], max: resin[2] },
  gravelLb: { min: gravel[0], usual: gravel[1], max: gravel[2] },
  openingsIn,
  source: COMMON_PRACTICE,
})

/**
 * Usual fills by tank. No neutral published table was found, so the label on the unit and the last service record outrank it, and a
 * firm may pass its own. Where the trade gives a range, `usual` is the fill nearest to how its neighbours are filled.
 */
export const TANK_SIZES: readonly TankSize[] = [
  size(7, 44, [0.5, 0.5, 0.5], [8, 9, 10], [2.5]),
  size(8, 44, [0.75, 0.75, 0.75], [10, 11, 12], [2.5]),
  size(9, 48, [1, 1, 1], [12, 14, 15], [2.5]),
  size(10, 44, [1, 1.25, 1.25], [15, 18, 20], [2.5]),
  size(10, 54, [1.5, 1.5, 1.5], [15, 18, 20], [2.5]),
  size(12, 52, [2, 2, 2], [20, 25, 30], [2.5]),
  size(13, 54, [2.5, 2.5, 2.5], [25, 33, 40], [2.5]),
  size(14, 65, [3, 3, 3.5], [40, 45, 50], [2.5, 4]),
  size(16, 65, [4, 4, 4], [50, 58, 65], [2.5, 4]),
  size(18, 65, [5, 5, 5], [75, 88, 100], [4]),
  size(21, 62, [7, 7, 7], [100, 113, 125], [4]),
  size(24, 72, [10, 10, 10], [200, 200, 200], [4]),
]

/** The listed size within half an inch of diameter and one inch of height, or null. */
export function findTankSize(diameterIn: number, heightIn: number, table: readonly TankSize[] = TANK_SIZES): TankSize | null {
  let best: TankSize | null = null
  let bestMiss = Number.POSITIVE_INFINITY
  for (const tank of table) {
    const missDiameter = Math.abs(tank.diameterIn - diameterIn)
    const missHeight = Math.abs(tank.heightIn - heightIn)
    if (missDiameter > 0.5 || missHeight > 1) continue
    const miss = missDiameter * 2 + missHeight
    if (miss < bestMiss) {
      best = tank
      bestMiss = miss
    }
  }
  return best
}
