import { AMOUNT_KINDS, type AmountKind } from '@almanac/units/amount-kinds'
import { convertConcentration } from '@almanac/units/concentration'
import { bvHToGpmFt3, convertFlow, gpmFt3ToBvH } from '@almanac/units/flow'
import { convertHardness } from '@almanac/units/hardness'
import { convertLength } from '@almanac/units/length'
import { convertMass } from '@almanac/units/mass'
import { convertPressure } from '@almanac/units/pressure'
import { readAmount } from '@almanac/units/read-amount'
import { numberText, readNumber } from '@almanac/units/read-number'
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

  it('bed volumes', () => {
    fc.assert(
      fc.property(amount, (value) => {
        const tolerance = 1e-9 * Math.max(1, Math.abs(value))
        expect(Math.abs(bvHToGpmFt3(gpmFt3ToBvH(value)) - value)).toBeLessThanOrEqual(tolerance)
      }),
      { seed },
    )
  })
})

describe('reading what people write', () => {
  it('never throws, and gives a finite value or a sentence', () => {
    const kinds = fc.constantFrom(...(Object.keys(AMOUNT_KINDS) as AmountKind[]))
    const locales = fc.constantFrom('en-US', 'de-DE', 'fr-FR')
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), kinds, locales, (text, kind, locale) => {
        const read = readAmount(kind, text, { locale })
        if (read.state === 'read') expect(Number.isFinite(read.value)).toBe(true)
        else if (read.state === 'refused') expect(read.said.key).not.toBe('')
        else expect(text.trim()).toBe('')
      }),
      { seed, numRuns: 500 },
    )
  })
  // Written by Intl in each locale, grouped or not: whatever the browser would show is read back.
  it('reads back any number that a locale writes', () => {
    const locales = fc.constantFrom('en-US', 'en-GB', 'de-DE', 'fr-FR', 'de-CH', 'es-MX', 'nl-NL')
    fc.assert(
      fc.property(
        fc.integer({ min: -999_999_999, max: 999_999_999 }),
        fc.integer({ min: 0, max: 3 }),
        locales,
        (digits, decimals, locale) => {
          const value = digits / 10 ** decimals
          const options = { minimumFractionDigits: decimals, maximumFractionDigits: decimals }
          expect(readNumber(new Intl.NumberFormat(locale, options).format(value), locale)).toBe(value)
          expect(readNumber(numberText(value, locale), locale)).toBe(value)
        },
      ),
      { seed },
    )
  })
})
