import type { Arrangement } from '@almanac/records/arrangement'
import { bvHToGpmFt3, emptyBedContactSeconds, gpmFt3ToBvH } from '@almanac/units/flow'
import type { BedBeads } from '../hydraulics/bed-expansion.ts'
import { bedPressureDropPsi } from '../hydraulics/pressure-drop.ts'
import type { WaterState } from '../hydraulics/water-state.ts'
import { agedBeads } from './aged-bed.ts'

/** Service flow of a softening bed, bed volumes an hour: 1 to 5 gpm/ft³ (Davis, Water and Wastewater Engineering, 2010, Table 8-2). */
const SERVICE_BV_H = { least: 8, most: 40 } as const
/** Public works: at most 7 gpm/ft², bed of at least 3 ft (Ten States Standards §4.4.2; Virginia 12 VAC 5-590-900). */
export const PUBLIC_WORKS_GPM_FT2 = 7
export const PUBLIC_WORKS_BED_IN = 36
/** Largest pressure drop at rated service flow, psi (NSF/ANSI 44); of the whole unit, so a bed alone must stay below it. */
export const MOST_DROP_PSI = 15

export type DropPsi = { clean: number; aged: number }

export type FlowFigures = {
  /** Tanks that work at the same time. */
  working: 1 | 2
  /** Peak demand of the house and what falls on one tank, gpm. */
  demandGpm: number
  tankGpm: number
  gpmFt2: number
  bedVolumesH: number
  contactSeconds: number | null
  /** What the softener carries by 40 bed volumes an hour, gpm, all working tanks together. */
  carriesGpm: number
  /** Below this flow water may find its own way through the bed, gpm. */
  leastGpm: number
  dropAtDemand: DropPsi
  dropAtCarried: DropPsi
  /** Flow at which the bed alone loses 15 psi, gpm. */
  at15Psi: DropPsi
  withinPublicWorks: { flux: boolean; depth: boolean }
  verdict: 'carries' | 'short' | 'far-short'
}

/** The house may ask for up to this many times the steady limit for the minutes of a peak; common practice, no source. */
const SHORT_PEAK = 1.5

/** Service flow of one bed against the demand. `demandGpm` not negative; volumes, area and depth above zero. */
export function flowFigures(
  beads: BedBeads,
  water: WaterState,
  bed: { resinFt3: number; areaFt2: number; depthIn: number },
  arrangement: Arrangement,
  demandGpm: number,
): FlowFigures {
  const working = arrangement === 'twin-parallel' ? 2 : 1
  const tankGpm = demandGpm / working
  const rate = tankGpm / bed.resinFt3
  const carriedByTank = bvHToGpmFt3(SERVICE_BV_H.most) * bed.resinFt3
  const carriesGpm = working * carriedByTank
  const aged = agedBeads(beads)
  const drop = (gpm: number): DropPsi => ({
    clean: bedPressureDropPsi(beads, water, gpm / bed.areaFt2, bed.depthIn),
    aged: bedPressureDropPsi(aged, water, gpm / bed.areaFt2, bed.depthIn),
  })
  const atLimit = (of: BedBeads) => working * bed.areaFt2 * fluxForDrop(of, water, bed.depthIn, MOST_DROP_PSI)
  return {
    working,
    demandGpm,
    tankGpm,
    gpmFt2: tankGpm / bed.areaFt2,
    bedVolumesH: gpmFt3ToBvH(rate),
    contactSeconds: emptyBedContactSeconds(rate),
    carriesGpm,
    leastGpm: working * bvHToGpmFt3(SERVICE_BV_H.least) * bed.resinFt3,
    dropAtDemand: drop(tankGpm),
    dropAtCarried: drop(carriedByTank),
    at15Psi: { clean: atLimit(beads), aged: atLimit(aged) },
    withinPublicWorks: { flux: tankGpm / bed.areaFt2 <= PUBLIC_WORKS_GPM_FT2, depth: bed.depthIn >= PUBLIC_WORKS_BED_IN },
    verdict: demandGpm <= carriesGpm ? 'carries' : demandGpm <= SHORT_PEAK * carriesGpm ? 'short' : 'far-short',
  }
}

/** Flow in gpm/ft² at which a bed loses `dropPsi`: Ergun's law is a quadratic in the velocity, solved. */
export function fluxForDrop(beads: BedBeads, water: WaterState, depthIn: number, dropPsi: number): number {
  const at1 = bedPressureDropPsi(beads, water, 1, depthIn)
  const at2 = bedPressureDropPsi(beads, water, 2, depthIn)
  // drop = a u + b u²: two points give both.
  const square = (at2 - 2 * at1) / 2
  const linear = at1 - square
  return (-linear + Math.sqrt(linear * linear + 4 * square * dropPsi)) / (2 * square)
}
