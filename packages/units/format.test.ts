import { describe, expect, it } from 'vitest'
import {
  formatCutLengthIn,
  formatDoseFlOz,
  formatFlowGpm,
  formatHardnessGpg,
  formatLengthIn,
  formatPercent,
  formatPressurePsi,
  formatTankSize,
  formatTemperatureF,
  formatVolumeFt3,
  formatWaterGal,
  formatWeightLb,
} from './format.ts'

/** Expected texts worked out by hand from the exact factors. */
describe('both systems', () => {
  it.each([
    [formatVolumeFt3(1.5, 'us'), '1½ ft³'],
    [formatVolumeFt3(1.5, 'metric'), '42 L'],
    [formatVolumeFt3(0.25, 'us'), '¼ ft³'],
    [formatVolumeFt3(1.06, 'us'), '1.06 ft³'],
    [formatVolumeFt3(0.1, 'metric'), '2.8 L'],
    [formatVolumeFt3(0, 'us'), '0 ft³'],
    [formatLengthIn(53.875, 'us'), '53⅞ in'],
    [formatLengthIn(53.875, 'metric'), '136.8 cm'],
    [formatLengthIn(1, 'metric'), '25 mm'],
    [formatCutLengthIn(53.875, 'metric'), '1,368 mm'],
    [formatTankSize(10, 54, 'us'), '10 × 54 in'],
    [formatTankSize(10, 54, 'metric'), '25 × 137 cm'],
    [formatHardnessGpg(18, 'us'), '18 gpg'],
    [formatHardnessGpg(18, 'metric'), '308 mg/L'],
    [formatFlowGpm(2.4, 'metric'), '9.1 L/min'],
    [formatWeightLb(78, 'metric'), '35 kg'],
    [formatTemperatureF(52, 'us'), '52 °F'],
    [formatTemperatureF(52, 'metric'), '11 °C'],
    [formatPressurePsi(80, 'metric'), '5.52 bar'],
    [formatWaterGal(5, 'metric'), '19 L'],
    [formatDoseFlOz(1.8, 'metric'), '53 mL'],
    [formatPercent(0.28), '28 %'],
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
      for (const value of [null, undefined, Number.NaN, Number.POSITIVE_INFINITY]) expect(format(value, 'us')).toBe('not known')
    expect(formatTankSize(10, null, 'us')).toBe('not known')
  })
})
