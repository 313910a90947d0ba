import type { WaterState } from './water-state.ts'

/** Standard gravity, m/s², exact. */
export const GRAVITY_M_S2 = 9.80665

/** Archimedes number of a bead in water. */
export function archimedes(diameterM: number, particleDensityKgM3: number, water: WaterState): number {
  const { densityKgM3, viscosityPaS } = water
  return (GRAVITY_M_S2 * diameterM ** 3 * densityKgM3 * (particleDensityKgM3 - densityKgM3)) / viscosityPaS ** 2
}

/** Least velocity (empty tank, m/s) that lifts a bed: Wen and Yu 1966, Re = √(33.7² + 0.0408 Ar) − 33.7. */
export function minimumFluidisationMS(diameterM: number, particleDensityKgM3: number, water: WaterState): number {
  const ar = archimedes(diameterM, particleDensityKgM3, water)
  const reynolds = Math.sqrt(33.7 ** 2 + 0.0408 * ar) - 33.7
  return (reynolds * water.viscosityPaS) / (water.densityKgM3 * diameterM)
}

/** Velocity and Reynolds number of a single bead falling in still water. */
export type TerminalVelocity = { velocityMS: number; reynolds: number }

/**
 * Terminal velocity with the drag law of Schiller and Naumann 1935, C_d = 24/Re (1 + 0.15 Re^0.687), for Re below 1000. Solved in
 * Reynolds number: Ar = 18 Re + 2.7 Re^1.687, by Newton's method from the Stokes value, which is always above the root.
 */
export function terminalVelocity(diameterM: number, particleDensityKgM3: number, water: WaterState): TerminalVelocity {
  const ar = archimedes(diameterM, particleDensityKgM3, water)
  if (!(ar > 0)) return { velocityMS: 0, reynolds: 0 }
  let reynolds = ar / 18
  for (let step = 0; step < 60; step += 1) {
    const power = reynolds ** 0.687
    const next = reynolds - (18 * reynolds + 2.7 * reynolds * power - ar) / (18 + 2.7 * 1.687 * power)
    const done = Math.abs(next - reynolds) < 1e-10 * reynolds
    reynolds = next
    if (done) break
  }
  return { velocityMS: (reynolds * water.viscosityPaS) / (water.densityKgM3 * diameterM), reynolds }
}
