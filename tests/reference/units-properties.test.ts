import { convertConcentration, eqLToKgrFt3, gLToLbFt3, kgrFt3ToEqL, lbFt3ToGL } from '@almanac/units/concentration'
import { bvHToGpmFt3, convertFlow, gpmFt2ToMH, gpmFt3ToBvH, mHToGpmFt2 } from '@almanac/units/flow'
import { convertHardness } from '@almanac/units/hardness'
import { convertLength } from '@almanac/units/length'
import { convertMass } from '@almanac/units/mass'
import { parseQuantity } from '@almanac/units/parse-quantity'
import { convertPressure } from '@almanac/units/pressure'
import { convertTemperature } from '@almanac/units/temperature'
import { convertVolume } from '@almanac/units/volume'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

const seed = Number(process.env.FC_SEED ?? 20_260_101)
console.info(`units properties: fast-check seed ${seed} (set FC_SEED to change it)`)

const amount = fc.double({ min: -1e6, max: 1e6, noNaN: true })
type Convert = (value: number, from: never, to: never) => number

/** Round trips must come back to a few units in the last place. */
function roundTrips(convert: Convert, units: readonly string[]) {
  const unit = fc.constantFrom(...units)
  fc.assert(
    fc.property(amount, unit, unit, (value, from, to) => {
      const there = convert(value, from as never, to as never)
      const back = convert(there, to as never, from as never)
      expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)))
    }),
    { seed },
  )
}

describe('conversions come back to where they began', () => {
  it.each([
    ['length', convertLength as Convert, ['in', 'ft', 'mm', 'cm', 'm']],
    ['volume', convertVolume as Convert, ['ft3', 'L', 'gal', 'm3', 'floz']],
    ['mass', convertMass as Convert, ['lb', 'kg', 'g', 'mg', 'oz', 'grain']],
    ['hardness', convertHardness as Convert, ['gpg', 'mg/L', 'dH', 'fH', 'mmol/L']],
    ['flow', convertFlow as Convert, ['gpm', 'L/min', 'm3/h', 'L/h']],
    ['pressure', convertPressure as Convert, ['psi', 'kPa', 'bar', 'Pa']],
    ['temperature', convertTemperature as Convert, ['F', 'C', 'K']],
    ['concentration', convertConcentration as Convert, ['mg/L', 'ug/L', 'g/L']],
  ])('%s', (_name, convert, units) => roundTrips(convert, units))

  it('capacity, salt dose, flux and bed volumes', () => {
    fc.assert(
      fc.property(amount, (value) => {
        const tolerance = 1e-9 * Math.max(1, Math.abs(value))
        expect(Math.abs(kgrFt3ToEqL(eqLToKgrFt3(value)) - value)).toBeLessThanOrEqual(tolerance)
        expect(Math.abs(gLToLbFt3(lbFt3ToGL(value)) - value)).toBeLessThanOrEqual(tolerance)
        expect(Math.abs(mHToGpmFt2(gpmFt2ToMH(value)) - value)).toBeLessThanOrEqual(tolerance)
        expect(Math.abs(bvHToGpmFt3(gpmFt3ToBvH(value)) - value)).toBeLessThanOrEqual(tolerance)
      }),
      { seed },
    )
  })
})

describe('reading what people write', () => {
  it('never throws, and gives a finite value or a sentence', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => {
        const read = parseQuantity(text)
        if (read.ok) expect(Number.isFinite(read.value)).toBe(true)
        else expect(read.reason.length).toBeGreaterThan(10)
      }),
      { seed, numRuns: 500 },
    )
  })
  it('reads back any written number with its unit', () => {
    const units = fc.constantFrom('gpg', 'mg/L', 'ft3', 'L', 'in', 'lb', 'gpm', 'psi')
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), fc.integer({ min: 1, max: 99 }), units, (whole, hundredths, unit) => {
        const value = Number(`${whole}.${String(hundredths).padStart(2, '0')}`)
        const written = `${whole.toLocaleString('en-US')}.${String(hundredths).padStart(2, '0')} ${unit}`
        expect(parseQuantity(written)).toMatchObject({ ok: true, value, unit })
      }),
      { seed },
    )
  })
})
