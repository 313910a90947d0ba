import {
  backwashFluxForExpansion,
  beadsOf,
  bedExpansion,
  richardsonZakiExponent,
  richardsonZakiVoidage,
} from '@almanac/softener/hydraulics/bed-expansion'
import { archimedes, terminalVelocity } from '@almanac/softener/hydraulics/particle-velocity'
import { bedPressureDropPsi, ergunPaM } from '@almanac/softener/hydraulics/pressure-drop'
import { waterDensityKgM3 } from '@almanac/softener/hydraulics/water-density'
import { waterAt } from '@almanac/softener/hydraulics/water-state'
import { waterViscosityPaS } from '@almanac/softener/hydraulics/water-viscosity'
import { RESIN_KINDS } from '@almanac/softener/resin/resin-kinds'
import { mSToGpmFt2 } from '@almanac/units/flow'
import { fToC } from '@almanac/units/temperature'
import { describe, expect, it } from 'vitest'
import { iapwsViscosity } from './iapws-viscosity.ts'

const within = (actual: number, expected: number, share: number) => expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(share)
const beads = beadsOf(RESIN_KINDS['gel-8'])

describe('water', () => {
  it('the yardstick itself: IAPWS R12-08 Table 4', () => {
    within(iapwsViscosity(298.15, 998), 889.7351, 1e-8)
    within(iapwsViscosity(373.15, 1000), 307.883622, 1e-8)
  })
  it('viscosity at 0.1 MPa agrees with IAPWS R12-08 to 0.01% from 0 to 40 °C', () => {
    for (let c = 0; c <= 40; c += 2) within(waterViscosityPaS(c) * 1e6, iapwsViscosity(c + 273.15, waterDensityKgM3(c)), 1e-4)
  })
  // Derived from the compact 0.1 MPa form of IAPWS R12-08, coefficients from memory; five figures.
  it.each([
    [5, 1.5182],
    [10, 1.3059],
    [15, 1.1376],
    [20, 1.0016],
    [25, 0.89],
    [30, 0.7972],
  ])('viscosity at %d °C is %d mPa·s', (temperatureC, expected) => within(waterViscosityPaS(temperatureC) * 1000, expected, 6e-5))

  // Kell 1975, air-free water at 101.325 kPa.
  it.each([
    [4, 999.972],
    [15, 999.1],
    [20, 998.203],
    [25, 997.045],
  ])('density at %d °C is %d kg/m³', (temperatureC, expected) =>
    expect(Math.abs(waterDensityKgM3(temperatureC) - expected)).toBeLessThan(0.002),
  )
})

describe('packed bed: Ergun 1952', () => {
  it('worked value: d 0.8 mm, voids 0.4, 1 mm/s over 1 m (test suite of an open numerical library)', () => {
    within(ergunPaM(0.001, 0.0008, 0.4, 1000, 1e-3), 1338.8671875, 1e-12)
  })
  // Derived: 0.65 mm, voids 0.38, water at 60 °F.
  it.each([
    [6, 0.525],
    [10, 0.899],
    [15, 1.395],
  ])('%d gpm/ft² over one foot loses %d psi', (flux, psi) =>
    expect(Math.abs(bedPressureDropPsi(beads, waterAt(fToC(60)), flux, 12) - psi)).toBeLessThanOrEqual(0.0006),
  )

  it('follows the temperature correction of typical data sheets, P_T = P_68/(0.014 T + 0.05), within 6%', () => {
    // The data sheets' straight line ignores that part of the drop does not depend on viscosity.
    const at68 = bedPressureDropPsi(beads, waterAt(fToC(68)), 6, 12)
    for (const f of [45, 50, 60, 75]) within(bedPressureDropPsi(beads, waterAt(fToC(f)), 6, 12), at68 / (0.014 * f + 0.05), 0.06)
  })
})

describe('expanded bed', () => {
  // Davis, Water and Wastewater Engineering (2010), Example 11-3: v 0.01 m/s, ν 1.307e-6 m²/s; exponent 0.2247 R^0.1 = 1/n.
  it.each([
    [2.0, 0.277891, 0.255],
    [1.0, 0.15441, 0.371],
    [0.505, 0.072715, 0.537],
    [0.252, 0.028313, 0.758],
  ])('grains of %d mm settling at %d m/s hang at %d voids', (diameterMm, settlingMS, voids) => {
    const reynolds = (settlingMS * diameterMm) / 1000 / 1.307e-6
    expect(Math.abs(richardsonZakiVoidage(0.01, settlingMS, reynolds) - voids)).toBeLessThanOrEqual(0.0006)
  })
  it('exponent of Richardson and Zaki 1954 by regime', () => {
    expect(richardsonZakiExponent(0.1)).toBe(4.65)
    expect(richardsonZakiExponent(0.5)).toBeCloseTo(4.35 * 0.5 ** -0.03, 10)
    expect(richardsonZakiExponent(16.12)).toBeCloseTo(3.37, 3)
    expect(richardsonZakiExponent(1000)).toBe(2.39)
  })
  it('resin case, derived: 0.65 mm, 1280 kg/m³, voids 0.38, 15 °C', () => {
    const water = waterAt(15)
    within(archimedes(0.00065, 1280, water), 584.07, 1e-4)
    const terminal = terminalVelocity(0.00065, 1280, water)
    within(terminal.velocityMS, 28.24e-3, 2e-4)
    within(terminal.reynolds, 16.12, 2e-4)
    within(backwashFluxForExpansion(beads, water, 0.5), 6.89, 7e-4)
  })
  it('cold water, derived: at 5 °C 8 gpm/ft² expands the bed 79%, 5 gpm/ft² 45%', () => {
    expect(Math.abs(bedExpansion(beads, waterAt(5), 8) - 0.79)).toBeLessThan(0.005)
    expect(Math.abs(bedExpansion(beads, waterAt(5), 5) - 0.45)).toBeLessThan(0.005)
  })
  it('Wen and Yu 1966: at the voids of its own formula the bed just hangs in the flow', () => {
    // ε^4.7 Ar = 18 Re + 2.7 Re^1.687, solved by hand at Ar 584.07, ε 0.6: Re = 2.320.
    const reynolds = 2.3204
    expect(18 * reynolds + 2.7 * reynolds ** 1.687).toBeCloseTo(0.6 ** 4.7 * 584.07, 1)
    const water = waterAt(15)
    const velocity = (reynolds * water.viscosityPaS) / (water.densityKgM3 * 0.00065)
    expect(bedExpansion(beads, water, mSToGpmFt2(velocity), 'wen-yu')).toBeCloseTo((1 - 0.38) / 0.4 - 1, 2)
  })
  it('follows the temperature correction of typical data sheets, F_T = F_77 (1 + 0.008 (T − 77)), within 6%', () => {
    const at77 = backwashFluxForExpansion(beads, waterAt(25), 0.5)
    for (const f of [50, 60, 70, 86]) within(backwashFluxForExpansion(beads, waterAt(fToC(f)), 0.5), at77 * (1 + 0.008 * (f - 77)), 0.06)
  })
})
