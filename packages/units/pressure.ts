export type PressureUnit = 'psi' | 'kPa' | 'bar' | 'Pa'

/** Pascals in one pound-force per square inch, from the exact pound, inch and standard gravity 9.80665 m/s². */
const PA_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2

const PA: Record<PressureUnit, number> = { psi: PA_PER_PSI, kPa: 1000, bar: 100_000, Pa: 1 }

/** Converts a pressure or a pressure drop between units. */
export function convertPressure(value: number, from: PressureUnit, to: PressureUnit): number {
  return from === to ? value : (value * PA[from]) / PA[to]
}

export const paToPsi = (pressurePa: number): number => pressurePa / PA_PER_PSI
