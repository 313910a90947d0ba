import { gpmFt2ToMS, mSToGpmFt2 } from '@almanac/units/flow'
import type { ResinKind } from '../resin/resin-kinds.ts'
import { archimedes, reynoldsByDrag, terminalVelocity } from './particle-velocity.ts'
import type { WaterState } from './water-state.ts'

/** Which correlation gives the expanded bed; they differ by some points of expansion, so the choice is shown. */
export type ExpansionModel = 'richardson-zaki' | 'wen-yu'

/** Beads as hydraulics sees them. */
export type BedBeads = { diameterM: number; densityKgM3: number; packedVoidage: number }

export function beadsOf(kind: ResinKind): BedBeads {
  return {
    diameterM: kind.meanDiameterMm.value / 1000,
    densityKgM3: kind.particleDensityKgM3.value,
    packedVoidage: kind.packedVoidage.value,
  }
}

/** Richardson and Zaki's exponent by the Reynolds number of a single falling bead (Richardson and Zaki 1954). */
export function richardsonZakiExponent(reynolds: number): number {
  if (reynolds < 0.2) return 4.65
  if (reynolds < 1) return 4.35 * reynolds ** -0.03
  return reynolds < 500 ? 4.45 * reynolds ** -0.1 : 2.39
}

/**
 * Voids of a bed in upward flow of `velocityMS` (empty tank): Richardson–Zaki u = u_t εⁿ, or Wen–Yu ε^4.7 = (18 Re + 2.7 Re^1.687)/Ar.
 * Never below the packed bed's; 1 means that the beads are carried out.
 */
function expandedVoidage(beads: BedBeads, water: WaterState, velocityMS: number, model: ExpansionModel): number {
  if (!(velocityMS > 0)) return beads.packedVoidage
  const voidage = model === 'wen-yu' ? wenYuVoidage(beads, water, velocityMS) : voidageByTerminal(beads, water, velocityMS)
  return Math.min(1, Math.max(beads.packedVoidage, voidage))
}

/** Voids at which beads of terminal velocity `terminalMS` hang in a flow of `velocityMS`; 1 where the flow carries them off. */
export function richardsonZakiVoidage(velocityMS: number, terminalMS: number, reynolds: number): number {
  if (velocityMS >= terminalMS) return 1
  return (velocityMS / terminalMS) ** (1 / richardsonZakiExponent(reynolds))
}

function voidageByTerminal(beads: BedBeads, water: WaterState, velocityMS: number): number {
  const terminal = terminalVelocity(beads.diameterM, beads.densityKgM3, water)
  return richardsonZakiVoidage(velocityMS, terminal.velocityMS, terminal.reynolds)
}

function wenYuVoidage(beads: BedBeads, water: WaterState, velocityMS: number): number {
  const reynolds = (water.densityKgM3 * velocityMS * beads.diameterM) / water.viscosityPaS
  const ar = archimedes(beads.diameterM, beads.densityKgM3, water)
  return ar > 0 ? ((18 * reynolds + 2.7 * reynolds ** 1.687) / ar) ** (1 / 4.7) : 1
}

/** Largest expansion reported: beyond tenfold the bed has left the tank, and the number would only mislead. */
export const MOST_EXPANSION = 10

/** Growth of the bed as a share of its settled depth (0.5 = 50%): 1 + E = (1 − ε₀)/(1 − ε). `fluxGpmFt2` is gpm per ft² of tank. */
export function bedExpansion(beads: BedBeads, water: WaterState, fluxGpmFt2: number, model: ExpansionModel = 'richardson-zaki'): number {
  const voidage = expandedVoidage(beads, water, gpmFt2ToMS(fluxGpmFt2), model)
  const solids = 1 - voidage
  if (solids <= (1 - beads.packedVoidage) / (1 + MOST_EXPANSION)) return MOST_EXPANSION
  return (1 - beads.packedVoidage) / solids - 1
}

/** Backwash in gpm/ft² that expands the bed by `expansion`; the inverse of `bedExpansion`. */
export function backwashFluxForExpansion(
  beads: BedBeads,
  water: WaterState,
  expansion: number,
  model: ExpansionModel = 'richardson-zaki',
): number {
  const voidage = 1 - (1 - beads.packedVoidage) / (1 + Math.max(0, expansion))
  if (model === 'wen-yu') {
    const reynolds = reynoldsByDrag(archimedes(beads.diameterM, beads.densityKgM3, water) * voidage ** 4.7)
    return mSToGpmFt2((reynolds * water.viscosityPaS) / (water.densityKgM3 * beads.diameterM))
  }
  const { velocityMS, reynolds } = terminalVelocity(beads.diameterM, beads.densityKgM3, water)
  return mSToGpmFt2(velocityMS * voidage ** richardsonZakiExponent(reynolds))
}
