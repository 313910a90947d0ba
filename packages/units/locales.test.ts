import { describe, expect, it } from 'vitest'
import { formatCutLengthIn, formatHardnessGpg, formatVolumeFt3, formatWeightLb } from './format.ts'
import { formatChance, formatPercent, showFixed, showNumber } from './format-number.ts'
import { formatMoney, formatWholeMoney } from './money.ts'

// Written by hand from CLDR's number patterns: en-US and en-GB part thousands with a comma, de-DE with a point and decimals with a comma; percent is
// #,##0% in English and #,##0 % with a no-break space in German; money is ¤#,##0.00 in English and #,##0.00 ¤ with a no-break space in German.
const shown = (locale: string, unitSystem: 'us' | 'metric', currency: string) => {
  const display = { locale, unitSystem, currency }
  return [
    showNumber(1234.5, 2, display),
    showFixed(7, 1, display),
    formatPercent(0.28, display),
    formatPercent(0.006, display, 1),
    formatChance(0.004, display),
    formatChance(0.996, display),
    formatMoney(120_050, display),
    formatWholeMoney(120_000, display),
    formatHardnessGpg(18.5, display),
    formatVolumeFt3(1.06, display),
    formatCutLengthIn(53.875, display),
    formatWeightLb(1300, display),
  ]
}

describe('amounts in three locales', () => {
  it('American, US customary', () =>
    expect(shown('en-US', 'us', 'USD')).toEqual([
      '1,234.5',
      '7.0',
      '28%',
      '0.6%',
      'under 1%',
      'over 99%',
      '$1,200.50',
      '$1,200',
      '18.5 gpg',
      '1.06 ft³',
      '53⅞ in',
      '1,300 lb',
    ]))
  it('British, metric', () =>
    expect(shown('en-GB', 'metric', 'GBP')).toEqual([
      '1,234.5',
      '7.0',
      '28%',
      '0.6%',
      'under 1%',
      'over 99%',
      '£1,200.50',
      '£1,200',
      '317 mg/L',
      '30 L',
      '1,368 mm',
      '590 kg',
    ]))
  it('German, metric', () =>
    expect(shown('de-DE', 'metric', 'EUR')).toEqual([
      ...['1.234,5', '7,0', '28\u00a0%', '0,6\u00a0%', 'under 1\u00a0%', 'over 99\u00a0%'],
      ...['1.200,50\u00a0€', '1.200\u00a0€', '317 mg/L', '30 L', '1.368 mm', '590 kg'],
    ]))
  it('never writes a minus before nothing', () => expect(showNumber(-0.004, 2, { locale: 'de-DE' })).toBe('0'))
})
