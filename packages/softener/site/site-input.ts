import type { Arrangement } from '@almanac/records/arrangement'
import type { ResinKindId } from '@almanac/records/resin-kind'
import type { DemandCurveId } from '../flow/demand-curves.ts'
import type { ExpansionModel } from '../hydraulics/bed-expansion.ts'
import type { Salt } from '../water/capacity.ts'

/** One softener at its site as far as it is known; null where it is not. Twin tanks are taken as alike. */
export type SiteInput = {
  diameterIn: number | null
  heightIn: number | null
  resinFt3: number | null
  nominalGrains: number | null
  gravelLb: number | null
  resinKind: ResinKindId | null
  arrangement: Arrangement
  bedAgeYears: number | null
  oldTubeLengthIn: number | null
  tubeOutsideDiameterIn: number | null
  hardnessGpg: number | null
  ironMgL: number | null
  manganeseMgL: number | null
  dissolvedSolidsMgL: number | null
  /** The coldest and the warmest the water gets in a year, and its usual temperature where only one is known, °F. */
  coldestF: number | null
  warmestF: number | null
  usualF: number | null
  people: number | null
  /** Softened water a day by a meter, gal. */
  measuredGalDay: number | null
  /** Sum of fixture units; the usual house for so many people where not counted. */
  fixtureUnits: number | null
  demandCurve: DemandCurveId
  expansionModel: ExpansionModel
  /** The flow control in the valve, gpm, and those it could have, rising. */
  backwashGpm: number | null
  controlsGpm: readonly number[]
  control: 'meter' | 'timer' | null
  refillGpm: number | null
  salt: Salt
  /** A salt dose to set instead of the best, lb/ft³. */
  wantedLbFt3: number | null
  mostLeakageMgL: number | null
}

/** Nothing known but that there is a softener; the starting point of forms and tests. */
export const UNKNOWN_SITE: SiteInput = {
  diameterIn: null,
  heightIn: null,
  resinFt3: null,
  nominalGrains: null,
  gravelLb: null,
  resinKind: null,
  arrangement: 'single',
  bedAgeYears: null,
  oldTubeLengthIn: null,
  tubeOutsideDiameterIn: null,
  hardnessGpg: null,
  ironMgL: null,
  manganeseMgL: null,
  dissolvedSolidsMgL: null,
  coldestF: null,
  warmestF: null,
  usualF: null,
  people: null,
  measuredGalDay: null,
  fixtureUnits: null,
  demandCurve: 'ipc',
  // Of two that differ by some points the careful one, which lifts the bed higher.
  expansionModel: 'wen-yu',
  backwashGpm: null,
  controlsGpm: [],
  control: null,
  refillGpm: null,
  salt: 'NaCl',
  wantedLbFt3: null,
  mostLeakageMgL: null,
}
