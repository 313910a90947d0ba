import FFT from 'fft.js'
import type { CountDistribution } from './count-distribution.ts'

/** Powers kept. */
export const POWERS = 32

/** Above this the series below would need more powers. */
const LARGEST = 0.15

/**
 * The series needs POWERS powers of 2p; at p = 0.15 the first one left out is 0.3^33/33 < 1e-18 a bed. Powers under 1e-26 are left out as well: they carry a
 * factor of 2^r/r, at most 1.4e8, so that a bed is off by less than 2e-18.
 */
export function usablePowerSum(chance: number): boolean {
  return chance <= LARGEST
}

/**
 * Distribution of the count from sums[r − 1] = Σ p^r over `beds` beds. On the unit circle ln G(z) = Σ ln(1 + p(z − 1)) = Σ_r (−1)^(r+1) (z − 1)^r/r · Σ p^r;
 * an inverse Fourier transform of G gives the chances of a window around the mean that leaves out less than 1e-17.
 */
export function distributionFromPowerSums(sums: Float64Array, beds: number): CountDistribution {
  const mean = sums[0] as number
  const sd = Math.sqrt(Math.max(0, mean - (sums[1] as number)))
  // Bernstein's bound: beyond 9 standard deviations and 40 counts either side less than 1e-17 is left.
  const reach = 9 * sd + 40
  let size = 128
  while (size < 2 * reach + 1) size *= 2
  const first = Math.max(0, Math.floor(mean) - size / 2)
  const generating = new Array<number>(2 * size).fill(0)
  for (let j = 0; j <= size / 2; j++) {
    const angle = (2 * Math.PI * j) / size
    const [re, im] = logGenerating(sums, angle)
    // Shifted by `first`, so that the window and not the counts 0 to size − 1 comes out.
    const phase = im - angle * first
    const length = Math.exp(re)
    generating[2 * j] = length * Math.cos(phase)
    generating[2 * j + 1] = length * Math.sin(phase)
    if (j > 0 && j < size / 2) {
      generating[2 * (size - j)] = length * Math.cos(phase)
      generating[2 * (size - j) + 1] = -length * Math.sin(phase)
    }
  }
  return window(generating, size, first, Math.min(size, beds - first + 1))
}

/** Transform size by size, kept because building one costs more than using it. */
const transforms = new Map<number, FFT>()

function window(generating: number[], size: number, first: number, width: number): CountDistribution {
  let fft = transforms.get(size)
  if (fft === undefined) {
    fft = new FFT(size)
    transforms.set(size, fft)
  }
  // fft.js transforms with e^(−iωn); G holds Σ f(n) e^(+iωn), whose inverse is that forward kernel: feed the conjugate to the inverse transform.
  for (let i = 1; i < generating.length; i += 2) generating[i] = -(generating[i] as number)
  const out = fft.createComplexArray()
  fft.inverseTransform(out, generating)
  // Rounding leaves ±1e-17 where the truth is nil.
  return { first, chance: Float64Array.from({ length: width }, (_, n) => Math.max(0, out[2 * n] as number)) }
}

/** Real and imaginary part of ln G(e^(iα)) by Horner's scheme in z − 1. */
function logGenerating(sums: Float64Array, angle: number): [number, number] {
  // cos α − 1 without cancellation near zero.
  const x = -2 * Math.sin(angle / 2) ** 2
  const y = Math.sin(angle)
  let re = 0
  let im = 0
  for (let r = POWERS; r >= 1; r--) {
    const coefficient = ((r % 2 === 1 ? 1 : -1) * (sums[r - 1] as number)) / r
    const nextRe = (coefficient + re) * x - im * y
    im = (coefficient + re) * y + im * x
    re = nextRe
  }
  return [re, im]
}
