import type { GravelFound, TankCondition } from './procedure-ask.ts'

/** A tank that an earlier visit made safe without its bed: when, and what that visit found. Null where it was not said. */
export type EmptiedTank = {
  /** ISO day. */
  day: string
  /** In the crew's own words. */
  found: string | null
  /** Length of the tube that came out, with its basket. */
  tubeIn: number | null
  gravel: GravelFound | null
  condition: TankCondition | null
}
