import type { WaterState } from './water-state.ts'

/** Standard gravity, m/s², exact. */
const GRAVITY_M_S2 = 9.80665

/** Archimedes number of a bead in water. */
export function archimedes(diameterM: number, particleDensityKgM3: number, water: WaterState): number {
  const { densityKgM3, viscosityPaS } = water
  return (GRAVITY_M_S2 * diameterM ** 3 * densityKgM3 * (particleDensityKgM3 - densityKgM3)) / viscosityPaS ** 2
}

/** Velocity and Reynolds number of a single bead falling in still water. */
export type TerminalVelocity = { velocityMS: number; reynolds: number }

/**
 * Reynolds number at which drag balances `drive`, by the law of Schiller and Naumann 1935, C_d = 24/Re (1 + 0.15 Re^0.687), for Re below
 * 1000: drive = 18 Re + 2.7 Re^1.687, by Newton's method from the Stokes value, which is always above the root. For a single bead the drive
 * is its Archimedes number; for a bed of voids ε, after Wen and Yu, Ar ε^4.7. Zero for no drive.
 */
export function reynoldsByDrag(drive: number): number {
  if (!(drive > 0)) return 0
  let reynolds = drive / 18
  for (let step = 0; step < 60; step += 1) {
    const power = reynolds ** 0.687
    const next = reynolds - (18 * reynolds + 2.7 * reynolds * power - drive) / (18 + 2.7 * 1.687 * power)
    const done = Math.abs(next - reynolds) < 1e-10 * reynolds
    reynolds = next
    if (done) break
  }
  return reynolds
}

/** Velocity of a single bead falling in still water. */
export function terminalVelocity(diameterM: number, particleDensityKgM3: number, water: WaterState): TerminalVelocity {
  const reynolds = reynoldsByDrag(archimedes(diameterM, particleDensityKgM3, water))
  return { velocityMS: (reynolds * water.viscosityPaS) / (water.densityKgM3 * diameterM), reynolds }
}
