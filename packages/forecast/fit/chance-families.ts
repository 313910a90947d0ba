import erfc from '@stdlib/math-base-special-erfc'
import type { LifeFamilyName } from '../lifetime/life-family.ts'

/**
 * A distribution of life in plain numbers, for loops over many records: z is kept in the form whose shift costs least (`power`), a shift of z by δ as one number for all
 * records (`shiftBy`). What lies too far out for plain numbers is worked out in logarithms by its caller (life-family.ts).
 */
export interface ChanceFamily {
  readonly power: (z: number) => number
  readonly shiftBy: (delta: number) => number
  /** Chances of lasting at sums [from, to) of `power`, shifted, into `out`. */
  readonly survivals: (power: Float64Array, from: number, to: number, shift: number, out: Float64Array) => void
  /** The same with first and second slopes by z. */
  readonly slopes: (
    power: Float64Array,
    from: number,
    to: number,
    shift: number,
    out: Float64Array,
    first: Float64Array,
    second: Float64Array,
  ) => void
  /** Density of z at one power, shifted, with its two slopes by z, into `out`. */
  readonly density: (power: number, shift: number, out: Float64Array) => void
}

/** power is the hazard e^z. */
const weibull: ChanceFamily = {
  power: Math.exp,
  shiftBy: Math.exp,
  survivals(power, from, to, shift, out) {
    for (let i = from; i < to; i++) out[i] = Math.exp(-(power[i] as number) * shift)
  },
  slopes(power, from, to, shift, out, first, second) {
    for (let i = from; i < to; i++) {
      const h = (power[i] as number) * shift
      const s = Math.exp(-h)
      out[i] = s
      first[i] = -h * s
      second[i] = (h - 1) * h * s
    }
  },
  density(power, shift, out) {
    const h = power * shift
    const d = h * Math.exp(-h)
    out[0] = d
    out[1] = d * (1 - h)
    out[2] = d * (1 - 3 * h + h * h)
  },
}

/** power is the odds e^z of having failed. */
const loglogistic: ChanceFamily = {
  power: Math.exp,
  shiftBy: Math.exp,
  survivals(power, from, to, shift, out) {
    for (let i = from; i < to; i++) out[i] = 1 / (1 + (power[i] as number) * shift)
  },
  slopes(power, from, to, shift, out, first, second) {
    for (let i = from; i < to; i++) {
      const s = 1 / (1 + (power[i] as number) * shift)
      const fall = s * (1 - s)
      out[i] = s
      first[i] = -fall
      second[i] = -fall * (2 * s - 1)
    }
  },
  density(power, shift, out) {
    const s = 1 / (1 + power * shift)
    const d = s * (1 - s)
    out[0] = d
    out[1] = d * (2 * s - 1)
    out[2] = d * ((2 * s - 1) ** 2 - 2 * d)
  },
}

const BY_ROOT = Math.SQRT1_2
const NORMAL = 1 / Math.sqrt(2 * Math.PI)

/** power is z itself. */
const lognormal: ChanceFamily = {
  power: (z) => z,
  shiftBy: (delta) => delta,
  survivals(power, from, to, shift, out) {
    for (let i = from; i < to; i++) out[i] = 0.5 * erfc(((power[i] as number) + shift) * BY_ROOT)
  },
  slopes(power, from, to, shift, out, first, second) {
    for (let i = from; i < to; i++) {
      const z = (power[i] as number) + shift
      const d = z === Number.NEGATIVE_INFINITY ? 0 : NORMAL * Math.exp(-0.5 * z * z)
      out[i] = 0.5 * erfc(z * BY_ROOT)
      first[i] = -d
      second[i] = d === 0 ? 0 : z * d
    }
  },
  density(power, shift, out) {
    const z = power + shift
    const d = NORMAL * Math.exp(-0.5 * z * z)
    out[0] = d
    out[1] = -z * d
    out[2] = (z * z - 1) * d
  },
}

export const CHANCE_FAMILIES: Readonly<Record<LifeFamilyName, ChanceFamily>> = { weibull, lognormal, loglogistic }
