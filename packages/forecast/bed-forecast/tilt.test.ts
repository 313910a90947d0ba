import { describe, expect, it } from 'vitest'
import { READING_MODELS } from './inspection-model.ts'
import { KNOTS, tilted, tiltFrom } from './tilt.ts'

const out = new Float64Array(2)
const at = (tilt: ReturnType<typeof tiltFrom>, s: number) => {
  tilted(tilt, s, out)
  return [out[0], out[1]]
}

describe('Bayes on what is left of a life', () => {
  it('changes nothing where all lives make the readings as likely', () => {
    const flat = tiltFrom(KNOTS.map(() => -3))
    for (const s of [0, 1e-5, 0.2, 0.5, 0.9999, 1]) expect(at(flat, s)[0]).toBeCloseTo(s, 12)
    expect(flat.logEvidence).toBeCloseTo(-3, 12)
  })

  it('has G(s) = s² with slope 2s for ℓ(s) = s, exact since ℓ is straight between knots', () => {
    const rising = tiltFrom(KNOTS.map((s) => Math.log(Math.max(s, 1e-300))))
    for (const s of [1e-3, 0.13, 0.5, 0.71, 0.98]) {
      expect(at(rising, s)[0]).toBeCloseTo(s * s, 12)
      expect(at(rising, s)[1]).toBeCloseTo(2 * s, 12)
    }
    expect(rising.logEvidence).toBeCloseTo(Math.log(0.5), 12)
  })

  it('ends a life where a quarter of the capacity is gone (UFC 3-240-13FN, 2005, §2-2.5.1.4)', () => {
    expect(READING_MODELS.capacity.start + READING_MODELS.capacity.rise).toBeCloseTo(0.75, 12)
  })
})
