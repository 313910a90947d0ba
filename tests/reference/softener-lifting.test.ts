import { emptyTankLb, jobWeight } from '@almanac/softener/kit/job-weight'
import { type Lift, nioshLifting } from '@almanac/softener/kit/niosh-lifting'
import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../support/speaking.ts'

const lift = (change: Partial<Lift>) => {
  const result = nioshLifting({
    weightLb: 44,
    horizontalIn: 10,
    verticalIn: 22,
    travelIn: 36,
    coupling: 'fair',
    liftsPerMinute: 3,
    ...change,
  })
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

describe('NIOSH 94-110, revised lifting equation', () => {
  it('worked example: 51 × 1.0 × .94 × .87 × 1.0 × .88 × .95 = 34.9 lb', () => {
    const { recommendedWeightLb, multipliers } = lift({})
    expect(multipliers.horizontal).toBe(1)
    expect(multipliers.vertical).toBeCloseTo(0.94, 10)
    expect(multipliers.distance).toBeCloseTo(0.87, 10)
    expect(multipliers.frequency).toBe(0.88)
    expect(multipliers.coupling).toBe(0.95)
    expect(Math.abs(recommendedWeightLb - 34.9)).toBeLessThanOrEqual(0.05)
  })
  it('a bag from the floor, derived: limit 23.4 lb, a 52 lb bag has index 2.2', () => {
    const bag = lift({ weightLb: 52, horizontalIn: 14, verticalIn: 6, travelIn: 36, coupling: 'poor', liftsPerMinute: 0.2 })
    expect(Math.abs(bag.recommendedWeightLb - 23.4)).toBeLessThanOrEqual(0.05)
    expect(Math.abs((bag.index ?? 0) - 2.2)).toBeLessThanOrEqual(0.05)
    expect(bag.advice).toMatch(/split the load or lift as a team/)
  })
  // Tables 5 and 7 of NIOSH 94-110 as far as quoted: work of up to one hour.
  it.each([
    [0.2, 1],
    [1, 0.94],
    [3, 0.88],
    [5, 0.8],
  ])('frequency %d a minute: %d', (liftsPerMinute, expected) => expect(lift({ liftsPerMinute }).multipliers.frequency).toBe(expected))
  it('coupling: good 1.00; fair .95 below 30 in, 1.00 above; poor .90', () => {
    expect(lift({ coupling: 'good' }).multipliers.coupling).toBe(1)
    expect(lift({ coupling: 'fair', verticalIn: 30 }).multipliers.coupling).toBe(1)
    expect(lift({ coupling: 'poor' }).multipliers.coupling).toBe(0.9)
  })
  it('asymmetry: 1 − 0.0032 A', () => expect(lift({ asymmetryDeg: 90 }).multipliers.asymmetry).toBeCloseTo(0.712, 10))
  it.each([{ horizontalIn: 26 }, { asymmetryDeg: 136 }, { verticalIn: 71 }, { travelIn: 71 }])(
    'gives zero, not a guess, beyond its range: %o',
    (change) => {
      expect(lift(change)).toMatchObject({ recommendedWeightLb: 0, index: null })
    },
  )
  it('reaches to the edges of its range', () => {
    for (const change of [{ horizontalIn: 25 }, { asymmetryDeg: 135 }, { verticalIn: 70 }, { travelIn: 70 }])
      expect(lift(change).index).toBeGreaterThan(0)
  })
  it('says what it does not cover, and refuses nonsense', () => {
    const result = nioshLifting({ weightLb: 10, horizontalIn: 10, verticalIn: 30, travelIn: 10, coupling: 'good' })
    expect(result.ok && result.assumptions.join()).toMatch(/stairs, slippery floors/)
    expect(nioshLifting({ weightLb: Number.NaN, horizontalIn: 10, verticalIn: 30, travelIn: 10, coupling: 'good' }).ok).toBe(false)
    expect(nioshLifting({ weightLb: 10, horizontalIn: -1, verticalIn: 30, travelIn: 10, coupling: 'good' }).ok).toBe(false)
    expect(nioshLifting({ weightLb: 10, horizontalIn: 10, verticalIn: 30, travelIn: 10, coupling: 'good', liftsPerMinute: 9 }).ok).toBe(
      false,
    )
  })
})

describe('weights of a rebed', () => {
  const full = jobWeight({ ...SPEAKING, diameterIn: 10, heightIn: 54, resinFt3: 1.5, gravelLb: 18 })
  it('a full 10 × 54, derived: resin about 78, gravel 18, tank 21 and valve 8 (from memory), water about 83: about 205 lb', () => {
    if (!full.ok) throw new Error(full.reason)
    // Resin at 51 to 53 lb/ft³ (typical data sheets); the water depends on voids assumed here as 0.38, so a tenth is allowed on it.
    expect(Math.abs(full.value.resinLb - 78)).toBeLessThanOrEqual(1.6)
    expect(full.value.gravelLb).toBe(18)
    expect(Math.abs(full.value.tankLb - 21)).toBeLessThanOrEqual(0.6)
    expect(full.value.valveLb).toBe(8)
    expect(Math.abs(full.value.waterLb / 83 - 1)).toBeLessThanOrEqual(0.1)
    expect(Math.abs(full.value.fullTankLb / 205 - 1)).toBeLessThanOrEqual(0.03)
    expect(full.value.crewSize).toBe(2)
  })
  it('water in a settled tank, derived: what resin and gravel leave free, and their voids of 0.38 and 0.40 (common practice), at 62.3 lb/ft³', () => {
    if (!full.ok) throw new Error(full.reason)
    const free = 0.92 * ((Math.PI * 25) / 144) * (54 / 12) - 1.5 - 0.18
    expect(full.value.waterLb).toBeCloseTo(62.3 * (free + 0.38 * 1.5 + 0.4 * 0.18), 6)
  })
  it('commercial tanks, from 21 in, take more than two people (common practice, no source)', () => {
    const big = jobWeight({ ...SPEAKING, diameterIn: 21, heightIn: 62, resinFt3: 7, gravelLb: 113 })
    expect(big.ok && big.value.crewSize).toBeGreaterThan(2)
    expect(jobWeight({ ...SPEAKING, diameterIn: 20, heightIn: 62, resinFt3: 6, gravelLb: 100 })).toMatchObject({ value: { crewSize: 2 } })
    expect(jobWeight({ ...SPEAKING, diameterIn: 13, heightIn: 54, resinFt3: 2.5, gravelLb: 30, access: 'stairs' })).toMatchObject({
      value: { crewSize: 3 },
    })
  })
  it('measured weights replace estimates, and sizes that cannot be are refused', () => {
    const known = jobWeight({ ...SPEAKING, diameterIn: 10, heightIn: 54, resinFt3: 1.5, gravelLb: 18, tankLb: 19, valveLb: 12 })
    expect(known).toMatchObject({ value: { tankLb: 19, valveLb: 12 }, assumptions: [] })
    expect(jobWeight({ ...SPEAKING, diameterIn: 0, heightIn: 54, resinFt3: 1.5, gravelLb: 18 }).ok).toBe(false)
    expect(emptyTankLb(24, 72)).toBeGreaterThan(emptyTankLb(10, 54))
  })
})
