import { describe, expect, it } from 'vitest'
import {
  formatCutLengthIn,
  formatDoseFlOz,
  formatFlowGpm,
  formatHardnessGpg,
  formatLengthIn,
  formatPressurePsi,
  formatTankSize,
  formatTemperatureF,
  formatVolumeFt3,
  formatWaterGal,
  formatWeightLb,
} from './format.ts'

const US = { locale: 'en-US', unitSystem: 'us' } as const
const METRIC = { locale: 'en-US', unitSystem: 'metric' } as const

/** Expected texts worked out by hand from the exact factors. */
describe('both systems', () => {
  it.each([
    [formatVolumeFt3(1.5, US), '1½ ft³'],
    [formatVolumeFt3(1.5, METRIC), '42 L'],
    [formatVolumeFt3(0.25, US), '¼ ft³'],
    [formatVolumeFt3(1.06, US), '1.06 ft³'],
    [formatVolumeFt3(0.1, METRIC), '2.8 L'],
    [formatVolumeFt3(0, US), '0 ft³'],
    [formatLengthIn(53.875, US), '53⅞ in'],
    [formatLengthIn(53.875, METRIC), '136.8 cm'],
    [formatLengthIn(1, METRIC), '25 mm'],
    [formatCutLengthIn(53.875, METRIC), '1,368 mm'],
    [formatTankSize(10, 54, US), '10 × 54 in'],
    [formatTankSize(10, 54, METRIC), '25 × 137 cm'],
    [formatHardnessGpg(18, US), '18 gpg'],
    [formatHardnessGpg(18, METRIC), '308 mg/L'],
    [formatFlowGpm(2.4, METRIC), '9.1 L/min'],
    [formatWeightLb(78, METRIC), '35 kg'],
    [formatTemperatureF(52, US), '52 °F'],
    [formatTemperatureF(52, METRIC), '11 °C'],
    [formatPressurePsi(80, METRIC), '5.52 bar'],
    [formatWaterGal(5, METRIC), '19 L'],
    [formatDoseFlOz(1.8, METRIC), '53 mL'],
  ])('%s', (shown, expected) => expect(shown).toBe(expected))
})

describe('what is missing or no number', () => {
  const all = [
    formatVolumeFt3,
    formatLengthIn,
    formatHardnessGpg,
    formatFlowGpm,
    formatWeightLb,
    formatTemperatureF,
    formatPressurePsi,
    formatWaterGal,
  ]
  it('reads "not known", never NaN', () => {
    for (const format of all)
      for (const value of [null, undefined, Number.NaN, Number.POSITIVE_INFINITY]) expect(format(value, US)).toBe('not known')
    expect(formatTankSize(10, null, US)).toBe('not known')
  })
})
