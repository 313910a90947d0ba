import { jobKinds } from '@almanac/records/job-kind'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { learnDurations, type VisitLength } from './learn-durations.ts'

const seed = Number(process.env.FC_SEED ?? 20_260_105)
console.info(`lengths of visits: fast-check seed ${seed} (set FC_SEED to change it)`)
const rebeds = (count: number, minutes: number): VisitLength[] =>
  Array.from({ length: count }, () => ({ kind: 'rebed', diameterIn: 10, minutes }))

describe('how long visits take', () => {
  it('without visits: the usual, and a quarter’s spread: 120 × e^(0.8416 × 0.25) = 148 min, to five', () => {
    expect(learnDurations([])('rebed', 10)).toEqual({ middle: 120, longer: 150, visits: 0, leftOut: 0 })
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
  it('a tablet forgotten over night is left out and counted, and so is what is no length', () => {
    const none = [900, 2, Number.NaN, 0, -30, null].map((minutes): VisitLength => ({ kind: 'rebed', diameterIn: 10, minutes }))
    expect(learnDurations(none)('rebed', 10)).toEqual({ middle: 120, longer: 150, visits: 0, leftOut: 6 })
    expect(learnDurations([...rebeds(8, 240), ...none])('rebed', 10)).toMatchObject({ middle: 170, visits: 8, leftOut: 6 })
    expect(learnDurations(none)('rebed', 24).leftOut).toBe(0)
  })
  it('a longer visit never shortens the middle; eight of ten is never below half; every visit is learnt from or counted as left out', () => {
    const visit = fc.record({
      kind: fc.constantFrom(...jobKinds),
      // One of each length that is usual for a rebed.
      diameterIn: fc.constantFrom(null, 10, 16, 21, 24),
      minutes: fc.integer({ min: 1, max: 4000 }),
    })
    fc.assert(
      fc.property(fc.array(visit, { minLength: 1, maxLength: 40 }), fc.nat(), (visits, pick) => {
        const one = visits[pick % visits.length] as (typeof visits)[number]
        const before = learnDurations(visits)(one.kind, one.diameterIn)
        const longer = visits.map((other) => (other === one ? { ...one, minutes: one.minutes * 1.1 } : other))
        const after = learnDurations(longer)(one.kind, one.diameterIn)
        const such = visits.filter(({ kind, diameterIn }) => kind === one.kind && (kind !== 'rebed' || diameterIn === one.diameterIn))
        expect(before.visits + before.leftOut).toBe(such.length)
        expect(before.longer).toBeGreaterThanOrEqual(before.middle)
        if (after.visits === before.visits) expect(after.middle).toBeGreaterThanOrEqual(before.middle)
      }),
      { seed, numRuns: 300 },
    )
  })
})
