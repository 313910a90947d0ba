import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { describe, expect, it } from 'vitest'
import { livesOnItsWater } from './lives-of-bed.ts'
import { yearsBySurvival } from './years-by-survival.ts'

const INPUT = {
  asOfDay: '2026-11-25',
  beginning: { earliestDay: '2015-01-01', latestDay: '2015-12-31' },
  lastSeenDay: '2026-01-10',
  crosslinkPercent: 8,
  resinVolumeFt3: 1.5,
  gallonsPerDay: 138,
  water: { supplyPeriods: [], tests: [], preTreatments: [] },
}
const supply = (disinfectant: 'none' | 'free-chlorine', disinfectantMgL: number | null) => ({
  ...INPUT,
  water: {
    ...INPUT.water,
    supplyPeriods: [{ fromDay: '1900-01-01', disinfectant, disinfectantMgL, hardnessGpg: null, ironMgL: null, temperatureC: null }],
  },
})
const livesOf = (input: Parameters<typeof livesOnItsWater>[0]) => {
  const result = livesOnItsWater(input, tradePriors())
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const middle = (years: number[]) => ((years[19] ?? 0) + (years[20] ?? 0)) / 2

describe('lives by a survival curve', () => {
  it('Weibull of shape 3 and scale 12: mean 10.716, half by 10.620 (closed form 12·Γ(4/3), 12·ln(2)^⅓)', () => {
    const years = yearsBySurvival((t) => Math.exp(-((t / 12) ** 3)), 400)
    expect(years.reduce((a, b) => a + b, 0) / 400).toBeCloseTo(10.716, 2)
    expect(((years[199] ?? 0) + (years[200] ?? 0)) / 2).toBeCloseTo(10.62, 2)
    expect(years).toEqual([...years].sort((a, b) => a - b))
  })
})

describe('a new bed on the water of the old', () => {
  it('clean water: half fail by 12 to 15 years (common practice, no source)', () => {
    const years = middle(livesOf(supply('none', null)).newBedYears)
    expect(years).toBeGreaterThan(12)
    expect(years).toBeLessThan(15)
  })
  it('chlorine shortens it; 10% lasts longer, by how much is in doubt', () => {
    const clean = middle(livesOf(supply('none', null)).newBedYears)
    const chlorine = livesOf(supply('free-chlorine', 2))
    expect(middle(chlorine.newBedYears)).toBeLessThan(0.7 * clean)
    expect(Math.min(...chlorine.longerTen)).toBeGreaterThan(1)
    expect(Math.max(...chlorine.longerTen) / Math.min(...chlorine.longerTen)).toBeGreaterThan(1.1)
  })
  it('the present bed’s own resin does not change what an 8% bed would do', () =>
    expect(livesOf({ ...supply('none', null), crosslinkPercent: 10 }).newBedYears).toEqual(livesOf(supply('none', null)).newBedYears))
  it('a record that contradicts itself is refused in its own words', () =>
    expect(livesOnItsWater({ ...INPUT, lastSeenDay: '2001-01-01' }, tradePriors())).toMatchObject({ ok: false }))
})
