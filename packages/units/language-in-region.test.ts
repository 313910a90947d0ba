import { localeFor } from '@almanac/records/language'
import { expect, it } from 'vitest'
import { formatClock } from './format-clock.ts'
import { showNumber } from './format-number.ts'
import { formatMoney } from './money.ts'
import { readNumber } from './read-number.ts'

// A person's language changes words only: decimals and clock are the region's (Unicode CLDR 46: point and 12 hours in the United States, Canada and Australia,
// point and 24 hours in Britain, comma and 24 hours in Germany).
it.each([
  ['en-US', '1,234.5', /^8:10.p\.?\sm\.?|^8:10.p\.m\./, 1200],
  ['en-GB', '1,234.5', /^20:10$/, 1200],
  ['en-CA', '1,234.5', /^8:10.p\.?\s?m/, 1200],
  ['en-AU', '1,234.5', /^8:10.p\.?\s?m/, 1200],
  ['de-DE', '1.234,5', /^20:10$/, 1.2],
] as const)('Spanish at a company of %s', (company, number, clock, typed) => {
  const locale = localeFor('es', company)
  expect(showNumber(1234.5, 1, { locale })).toBe(number)
  expect(formatClock('2026-11-29T20:10:00Z', { locale, timeZone: 'UTC' })).toMatch(clock)
  expect(readNumber('1,200', locale)).toBe(typed)
})

it('money too', () => {
  expect(formatMoney(123_450, { locale: localeFor('es', 'en-US'), currency: 'USD' })).toBe('$1,234.50')
  expect(formatMoney(123_450, { locale: localeFor('es', 'en-GB'), currency: 'GBP' })).toBe('£1,234.50')
})
