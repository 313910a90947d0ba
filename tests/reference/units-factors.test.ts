import { CACO3_G_PER_EQ, eqLToKgrFt3, KCL_G_PER_EQ, lbFt3ToGL, NA_G_PER_EQ, NACL_G_PER_EQ } from '@almanac/units/concentration'
import { emptyBedContactSeconds, gpmFt2ToMH, gpmFt2ToMS, gpmFt3ToBvH } from '@almanac/units/flow'
import { convertHardness, gpgToMgL } from '@almanac/units/hardness'
import { convertLength } from '@almanac/units/length'
import { convertMass, MG_PER_GRAIN } from '@almanac/units/mass'
import { convertPressure } from '@almanac/units/pressure'
import { convertTemperature } from '@almanac/units/temperature'
import { convertVolume } from '@almanac/units/volume'
import { describe, expect, it } from 'vitest'

/** Agreement to the last figure given: half a unit of it. */
const near = (actual: number, expected: number, decimals: number) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(0.5 * 10 ** -decimals)

describe('exact definitions (international yard and pound 1959, US gallon of 231 in³)', () => {
  it('keeps the defined factors to every figure', () => {
    expect(MG_PER_GRAIN).toBe(64.79891)
    expect(convertVolume(1, 'gal', 'L')).toBe(3.785411784)
    near(convertVolume(1, 'ft3', 'L'), 28.316846592, 9)
    near(convertVolume(1, 'ft3', 'gal'), 7.480519, 6)
    near(convertMass(1, 'lb', 'g'), 453.59237, 5)
    expect(convertMass(7000, 'grain', 'lb')).toBeCloseTo(1, 12)
    expect(convertLength(1, 'in', 'mm')).toBe(25.4)
    expect(convertLength(1, 'ft', 'in')).toBeCloseTo(12, 12)
    near(convertVolume(128, 'floz', 'gal'), 1, 12)
    near(convertMass(16, 'oz', 'lb'), 1, 12)
  })
})

describe('derived from exact definitions and standard atomic weights', () => {
  it('hardness: 1 gpg', () => {
    near(gpgToMgL(1), 17.1181, 4)
    near(gpgToMgL(1), 64.79891 / 3.785411784, 10)
    near(convertHardness(1, 'gpg', 'dH'), 0.959, 3)
    near(convertHardness(1, 'gpg', 'fH'), 1.712, 3)
    near(convertHardness(1, 'gpg', 'mmol/L'), 0.171, 4)
  })
  it('equivalents', () => {
    near(CACO3_G_PER_EQ, 50.04, 2)
    near(NACL_G_PER_EQ, 58.443, 3)
    near(NA_G_PER_EQ, 22.99, 3)
    near(KCL_G_PER_EQ, 74.551, 3)
    near(eqLToKgrFt3(1), 21.869, 3)
    near(eqLToKgrFt3(2.1), 45.9, 1)
  })
  it('flow and density', () => {
    expect(Math.abs(gpmFt2ToMS(1) - 6.79097e-4)).toBeLessThan(5e-9)
    near(gpmFt2ToMH(1), 2.44475, 5)
    near(gpmFt3ToBvH(1), 8.0208, 4)
    near(emptyBedContactSeconds(1) ?? 0, 448.8, 1)
    near(emptyBedContactSeconds(5) ?? 0, 89.8, 1)
    near(lbFt3ToGL(1), 16.0185, 4)
    near(convertPressure(1, 'psi', 'kPa'), 6.894757, 6)
  })
  it('temperature: freezing and boiling', () => {
    expect(convertTemperature(32, 'F', 'C')).toBe(0)
    expect(convertTemperature(100, 'C', 'F')).toBe(212)
    expect(convertTemperature(0, 'C', 'K')).toBe(273.15)
  })
})
