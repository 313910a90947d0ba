import type { RecordedResinKind } from './resin-kind.ts'
import type { SupplyKind } from './supply-kind.ts'

/**
 * What is on record of a bed, its tank and the valve on it: all that its kit, drawing, steps and plan are made from. Lengths in inches, volumes in ft³,
 * weights in lb, flows in gpm; null where not known.
 */
export type BedFacts = {
  bedId: string
  resinKind: RecordedResinKind
  volumeFt3: number | null
  /** 0: the tank has none. */
  gravelLb: number | null
  /** Length of the distributor tube in the tank, with its basket: as cut at the last rebed, or measured since. */
  tubeCutIn: number | null
  diameterIn: number | null
  heightIn: number | null
  nominalGrains: number | null
  /** The tank's size as it was written, where it could not be read. */
  sizeAsWritten: string | null
  /** Outside diameter of the tube, as recorded of the valve at hand. */
  tubeOdIn: number | null
  valveCardId: string | null
  backwashGpm: number | null
}

/** The water that reaches a bed, as far as its drawing and steps need it. */
export type BedWater = { source: SupplyKind | null; ironMgL: number | null; temperatureC: number | null }
