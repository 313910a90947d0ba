import { convertConcentration } from '@almanac/units/concentration'
import { convertFlow } from '@almanac/units/flow'
import {
  formatFlowGpm,
  formatHardnessGpg,
  formatLengthIn,
  formatPressurePsi,
  formatVolumeFt3,
  formatWaterGal,
  formatWeightLb,
} from '@almanac/units/format'
import { convertHardness } from '@almanac/units/hardness'
import { convertLength, inToM, inToMm } from '@almanac/units/length'
import { convertMass, lbToKg } from '@almanac/units/mass'
import { convertPressure } from '@almanac/units/pressure'
import { readLeadingNumber } from '@almanac/units/read-number'
import { convertVolume } from '@almanac/units/volume'
import { describe, expect, it } from 'vitest'

const US = { locale: 'en-US', unitSystem: 'us' } as const
const METRIC = { locale: 'en-US', unitSystem: 'metric' } as const

/** Relative agreement to nine figures. */
const same = (actual: number, expected: number) => expect(Math.abs(actual / expected - 1)).toBeLessThan(1e-9)

// NIST Special Publication 811 (2008), Appendix B.8; the SI prefixes; the international yard and pound of 1959.
describe('each unit against its definition (NIST SP 811, Appendix B.8)', () => {
  it.each<[number, Parameters<typeof convertLength>[1], Parameters<typeof convertLength>[2], number]>([
    [1, 'm', 'mm', 1000],
    [1, 'cm', 'mm', 10],
    [1, 'm', 'cm', 100],
    [1, 'ft', 'm', 0.3048],
    [1, 'in', 'cm', 2.54],
  ])('%d %s in %s', (value, from, to, expected) => same(convertLength(value, from, to), expected))

  it('short cuts for lengths', () => {
    same(inToMm(2), 50.8)
    same(inToM(1), 0.0254)
  })

  it.each<[number, Parameters<typeof convertMass>[1], Parameters<typeof convertMass>[2], number]>([
    [1, 'kg', 'g', 1000],
    [1, 'g', 'mg', 1000],
    [1, 'lb', 'kg', 0.45359237],
    [1, 'oz', 'g', 28.349523125],
    [1, 'grain', 'mg', 64.79891],
  ])('%d %s in %s', (value, from, to, expected) => same(convertMass(value, from, to), expected))

  it('short cut for masses', () => same(lbToKg(1), 0.45359237))

  it.each<[number, Parameters<typeof convertFlow>[1], Parameters<typeof convertFlow>[2], number]>([
    [1, 'm3/h', 'L/h', 1000],
    [60, 'L/h', 'L/min', 1],
    [1, 'gpm', 'L/min', 3.785411784],
    [1, 'm3/h', 'L/min', 1000 / 60],
  ])('%d %s in %s', (value, from, to, expected) => same(convertFlow(value, from, to), expected))

  it('concentration, pressure, volume and hardness', () => {
    same(convertConcentration(1, 'g/L', 'mg/L'), 1000)
    same(convertConcentration(1, 'mg/L', 'ug/L'), 1000)
    same(convertPressure(1, 'bar', 'kPa'), 100)
    same(convertPressure(1, 'kPa', 'Pa'), 1000)
    // SP 811: 1 psi is 6.894757 kPa; a foot is 0.3048 m.
    expect(Math.abs(convertPressure(1, 'psi', 'kPa') - 6.894757)).toBeLessThan(5e-7)
    same(convertVolume(1, 'm3', 'L'), 1000)
    // 1 gpg is a grain (64.79891 mg) in a gallon (3.785411784 L).
    same(convertHardness(1, 'gpg', 'mg/L'), 64.79891 / 3.785411784)
  })

  it.each<[string, number]>([
    ['⅛', 0.125],
    ['¼', 0.25],
    ['⅓', 1 / 3],
    ['⅜', 0.375],
    ['½', 0.5],
    ['⅝', 0.625],
    ['⅔', 2 / 3],
    ['¾', 0.75],
    ['⅞', 0.875],
  ])('the written fraction %s', (text, value) => same(readLeadingNumber(`1${text}`)?.value ?? 0, 1 + value))
})

// How the firm reads its figures is our own choice: one decimal for small values, none for large, eighths where a rule shows them.
describe('where a shown value gains or loses a decimal', () => {
  it.each([
    [formatVolumeFt3(0.353, METRIC), '10 L'],
    [formatVolumeFt3(0.36, METRIC), '10 L'],
    [formatVolumeFt3(0.3496, METRIC), '9.9 L'],
    [formatVolumeFt3(1.51, US), '1.51 ft³'],
    [formatVolumeFt3(1.5095, US), '1½ ft³'],
    [formatVolumeFt3(1.5105, US), '1.51 ft³'],
    [formatWaterGal(20.4, US), '20 gal'],
    [formatWaterGal(19.4, US), '19.4 gal'],
    [formatLengthIn(4, METRIC), '10.2 cm'],
    [formatLengthIn(3.9, METRIC), '99 mm'],
    [formatHardnessGpg(0.6, METRIC), '10 mg/L'],
    [formatHardnessGpg(0.58, METRIC), '9.9 mg/L'],
    [formatWeightLb(10.4, US), '10 lb'],
    [formatWeightLb(9.4, US), '9.4 lb'],
    [formatPressurePsi(10.4, US), '10 psi'],
    [formatPressurePsi(9.4, US), '9.4 psi'],
    [formatFlowGpm(2, METRIC), '7.6 L/min'],
  ])('%s', (shown, expected) => expect(shown).toBe(expected))
})
