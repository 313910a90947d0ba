import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobKinds } from './job-kinds.ts'
import { learnDurations, type VisitLength } from './learn-durations.ts'

const seed = Number(process.env.FC_SEED ?? 20_260_105)
console.info(`lengths of visits: fast-check seed ${seed} (set FC_SEED to change it)`)
const rebeds = (count: number, minutes: number): VisitLength[] =>
  Array.from({ length: count }, () => ({ kind: 'rebed', diameterIn: 10, minutes }))

describe('how long visits take', () => {
  it('without visits: the usual, and a quarter’s spread: 120 × e^(0.8416 × 0.25) = 148 min, to five', () => {
    expect(learnDurations([])('rebed', 10)).toEqual({ middle: 120, longer: 150, visits: 0 })
    expect(learnDurations([])('annual-visit', null).middle).toBe(45)
  })
  it('eight visits of twice the usual meet the guess half way, by logarithm: 120 × √2 = 170 min', () => {
    expect(learnDurations(rebeds(8, 240))('rebed', 10)).toMatchObject({ middle: 170, visits: 8 })
  })
  it('eight hundred are believed, and other sizes and kinds learn nothing of them', () => {
    const learnt = learnDurations(rebeds(800, 240))
    expect(learnt('rebed', 10).middle).toBe(240)
    expect(learnt('rebed', 24).middle).toBe(480)
    expect(learnt('cleaning', 10).middle).toBe(60)
  })
  it('a tablet forgotten over night is left out, and so is what is no length', () => {
    expect(learnDurations([...rebeds(3, 900), ...rebeds(3, 2), ...rebeds(1, Number.NaN), ...rebeds(1, 0)])('rebed', 10).visits).toBe(0)
  })
  it('a longer visit never shortens either figure’s middle; eight of ten is never below half', () => {
    const visit = fc.record({
      kind: fc.constantFrom(...jobKinds),
      diameterIn: fc.constantFrom(null, 8, 10, 16, 24),
      minutes: fc.integer({ min: 1, max: 900 }),
    })
    fc.assert(
      fc.property(fc.array(visit, { maxLength: 40 }), fc.nat(), (visits, pick) => {
        const one = visits[pick % Math.max(1, visits.length)]
        if (!one) return
        const before = learnDurations(visits)(one.kind, one.diameterIn)
        const after = learnDurations(visits.map((other) => (other === one ? { ...one, minutes: one.minutes * 1.1 } : other)))(
          one.kind,
          one.diameterIn,
        )
        expect(before.longer).toBeGreaterThanOrEqual(before.middle)
        if (after.visits === before.visits) expect(after.middle).toBeGreaterThanOrEqual(before.middle)
      }),
      { seed, numRuns: 300 },
    )
  })
})
