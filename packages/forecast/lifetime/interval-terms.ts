import { type LifeFamily, log1mExp } from './life-family.ts'

const first = new Float64Array(3)
const second = new Float64Array(3)

/**
 * ln(S(a) − S(b)) for a < b, both finite, with its derivatives into out: [value, by a, by b, by a twice, by a and b, by b twice]. Exact to the digits of
 * ln S even when the interval is short or far out.
 */
export function intervalTerms(family: LifeFamily, a: number, b: number, out: Float64Array): void {
  family.logSurvival(a, first)
  family.logSurvival(b, second)
  // In the lower tail S is near 1 and its difference has no digits left; there ln F carries them.
  if ((first[0] as number) >= -0.7) {
    family.logFailure(b, first)
    family.logFailure(a, second)
  }
  const log = (first[0] as number) + log1mExp((first[0] as number) - (second[0] as number))
  family.logDensity(a, first)
  family.logDensity(b, second)
  const ra = Math.exp((first[0] as number) - log)
  const rb = Math.exp((second[0] as number) - log)
  out[0] = log
  out[1] = -ra
  out[2] = rb
  out[3] = -ra * (first[1] as number) - ra * ra
  out[4] = ra * rb
  out[5] = rb * (second[1] as number) - rb * rb
}
