import { bedExpansion, MOST_EXPANSION, richardsonZakiExponent } from '@almanac/softener/hydraulics/bed-expansion'
import { archimedes, terminalVelocity } from '@almanac/softener/hydraulics/particle-velocity'
import { ASSUMED_WATER_F, waterAt, waterStateF } from '@almanac/softener/hydraulics/water-state'
import { capacityKgrFt3 } from '@almanac/softener/water/capacity'
import {
  ageFactor,
  dissolvedSolidsFactor,
  leakageMgL,
  TDS_FREE_MG_L,
  temperatureFactor,
  YEARLY_LOSS,
} from '@almanac/softener/water/capacity-effects'
import { compensatedHardness, MOST_IRON_MG_L } from '@almanac/softener/water/compensated-hardness'
import { SODIUM_ADVISORY_MG_L } from '@almanac/softener/water/regeneration'
import { describe, expect, it } from 'vitest'
import { CARD, SPEAKING } from '../support/speaking.ts'

describe('capacity by temperature', () => {
  // Michaud, Water Conditioning & Purification: about 5% more from 60 to 80 °F, steep loss below 50 °F. The slope below, 1.5% a degree, from memory.
  it.each([
    [60, 1],
    [70, 1.025],
    [79.9, 1.04975],
    [80, 1.05],
    [85, 1.05],
    [100, 1.05],
    [52, 0.98],
    [50, 0.975],
    [40, 0.825],
    [32, 0.705],
    [10, 0.5],
    [18.4, 0.501],
  ])('%d °F gives %d', (temperatureF, share) => expect(temperatureFactor(temperatureF)).toBeCloseTo(share, 9))
})

describe('capacity in salty water (from memory, unverified)', () => {
  it('loses 2% for each 500 mg/L above 500, never below a half', () => {
    expect(TDS_FREE_MG_L).toBe(500)
    expect(dissolvedSolidsFactor(500)).toBe(1)
    expect(dissolvedSolidsFactor(1000)).toBeCloseTo(0.98, 12)
    expect(dissolvedSolidsFactor(3000)).toBeCloseTo(0.9, 12)
    expect(dissolvedSolidsFactor(50_000)).toBe(0.5)
  })
  it('leaks with the square of dissolved solids over 1,000 mg/L, and only there', () => {
    // Michaud: about 5 mg/L at 8 lb/ft³.
    expect(leakageMgL(8, 1000)).toBe(5)
    expect(leakageMgL(8, 1040)).toBeCloseTo(5 * 1.04 ** 2, 9)
    expect(leakageMgL(8, 2000)).toBe(20)
  })
})

describe('loss with age (UFC 3-240-13FN §2-2.5.1.4: 1 to 5% a year)', () => {
  it('takes the middle where nothing is measured', () => {
    expect(YEARLY_LOSS).toEqual({ least: 0.01, usual: 0.03, most: 0.05 })
    expect(ageFactor(10)).toBeCloseTo(0.7, 12)
  })
})

describe('capacity and hardness at their limits', () => {
  it('never exceeds what the salt can do by charge: 5,994 gr/lb (atomic weights)', () => {
    const curve = { id: 'data-sheet', label: '', points: [[5, 40]], source: '' } as const
    expect(capacityKgrFt3('gel-8', 5, 'NaCl', curve)).toBeCloseTo(5 * 5.994, 2)
  })
  it('warns of iron above 2 mg/L (common practice, no source)', () => {
    const warned = (ironMgL: number) => {
      const made = compensatedHardness({ hardnessGpg: 10, ironMgL }, CARD)
      return made.ok && made.value.warnings.length
    }
    expect(MOST_IRON_MG_L).toBe(2)
    expect([warned(2), warned(2.01)]).toEqual([0, 1])
  })
  it('refuses what is no drinking water (limits are our own)', () => {
    const stands = (hardnessGpg: number, ironMgL = 0) => compensatedHardness({ hardnessGpg, ironMgL }, CARD).ok
    expect([stands(0), stands(250), stands(250.1), stands(-0.1)]).toEqual([true, true, false, false])
    expect([stands(10, 100), stands(10, 100.1)]).toEqual([true, false])
  })
})

describe('regeneration', () => {
  // EPA 822-R-03-006, Drinking Water Advisory on Sodium: 20 mg/L for those on a diet of at most 500 mg a day.
  it('knows the sodium advisory', () => expect(SODIUM_ADVISORY_MG_L).toBe(20))
})

describe('water and beads', () => {
  it('takes 60 °F where nothing is measured (common practice, no source), and refuses ice and steam', () => {
    expect(ASSUMED_WATER_F).toBe(60)
    const made = waterStateF(null, SPEAKING)
    expect(made.ok && made.value.temperatureC).toBeCloseTo(15.5556, 4)
    expect([31.9, 32, 140, 140.1].map((f) => waterStateF(f, SPEAKING).ok)).toEqual([false, true, true, false])
  })
  // IAPWS-95 at 0.1 MPa, kg/m³ (from memory); Kell 1975 agrees to 0.02.
  it.each([
    [50, 988.035],
    [60, 983.196],
    [90, 965.309],
  ])('weighs at %d °C what IAPWS-95 gives', (celsius, density) =>
    expect(Math.abs(waterAt(celsius).densityKgM3 - density)).toBeLessThan(0.02),
  )

  // Richardson and Zaki 1954: where the exponent's ranges meet.
  it.each([
    [0.199, 4.65],
    [0.205, 4.35 * 0.205 ** -0.03],
    [0.999, 4.35 * 0.999 ** -0.03],
    [499, 4.45 * 499 ** -0.1],
    [501, 2.39],
    [520, 2.39],
  ])('exponent at Re %d', (reynolds, exponent) => expect(richardsonZakiExponent(reynolds)).toBeCloseTo(exponent, 9))

  it('reports at most a tenfold expansion: beyond it the bed has left the tank (our own limit)', () => {
    expect(MOST_EXPANSION).toBe(10)
    expect(bedExpansion({ diameterM: 0.00065, densityKgM3: 1280, packedVoidage: 0.38 }, waterAt(15), 40)).toBe(10)
  })

  // Stokes' law holds for very small spheres: u = (ρp − ρ) g d² / 18 µ.
  it('falls by Stokes’ law where a sphere is very small', () => {
    const water = waterAt(20)
    const d = 2e-5
    const stokes = ((1280 - water.densityKgM3) * 9.80665 * d * d) / (18 * water.viscosityPaS)
    expect(terminalVelocity(d, 1280, water).velocityMS / stokes).toBeCloseTo(1, 2)
    // Schiller and Naumann: Re satisfies 18 Re (1 + 0.15 Re^0.687) = Ar.
    const { reynolds } = terminalVelocity(0.00065, 1280, water)
    expect((18 * reynolds * (1 + 0.15 * reynolds ** 0.687)) / archimedes(0.00065, 1280, water)).toBeCloseTo(1, 6)
  })
})
