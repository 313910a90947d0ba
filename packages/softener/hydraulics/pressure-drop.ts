import { gpmFt2ToMS } from '@almanac/units/flow'
import { inToM } from '@almanac/units/length'
import { paToPsi } from '@almanac/units/pressure'
import type { BedBeads } from './bed-expansion.ts'
import type { WaterState } from './water-state.ts'

/**
 * Pressure gradient in a packed bed, Pa/m, by Ergun 1952: 150 µu(1−ε)²/(ε³d²) + 1.75 ρu²(1−ε)/(ε³d). SI units; `velocityMS` is that
 * of the empty tank.
 */
export function ergunPaM(velocityMS: number, diameterM: number, voidage: number, densityKgM3: number, viscosityPaS: number): number {
  const solids = 1 - voidage
  const cube = voidage ** 3
  const viscous = (150 * viscosityPaS * velocityMS * solids * solids) / (cube * diameterM * diameterM)
  const inertial = (1.75 * densityKgM3 * velocityMS * velocityMS * solids) / (cube * diameterM)
  return viscous + inertial
}

/** Pressure lost in a bed of `depthIn`, psi, at `fluxGpmFt2` of downward flow; flow and depth not negative. */
export function bedPressureDropPsi(beads: BedBeads, water: WaterState, fluxGpmFt2: number, depthIn: number): number {
  const gradient = ergunPaM(gpmFt2ToMS(fluxGpmFt2), beads.diameterM, beads.packedVoidage, water.densityKgM3, water.viscosityPaS)
  return paToPsi(gradient * inToM(depthIn))
}
