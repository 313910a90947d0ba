import { describe, expect, it } from 'vitest'
import { formatMoney, formatWholeMoney, minorPer } from './money.ts'

// Minor units: ISO 4217, table A.1: dollar and euro 2, yen 0, Kuwaiti dinar 3.
describe('money', () => {
  it.each([
    ['USD', 100],
    ['EUR', 100],
    ['JPY', 1],
    ['KWD', 1000],
  ])('%s has %d minor units', (currency, minor) => expect(minorPer(currency)).toBe(minor))
  it('is shown in the currency’s own decimals, or rounded to none', () => {
    expect(formatMoney(42_000, { locale: 'en-US', currency: 'USD' })).toBe('$420.00')
    expect(formatMoney(420, { locale: 'en-US', currency: 'JPY' })).toBe('¥420')
    expect(formatWholeMoney(6_449, { locale: 'en-US', currency: 'USD' })).toBe('$64')
    expect(formatWholeMoney(6_450, { locale: 'en-US', currency: 'USD' })).toBe('$65')
  })
})
