import { describe, expect, it } from 'vitest'
import { dialogTitle, figureWords } from './figure-words.ts'

const US = { locale: 'en-US', unitSystem: 'us' } as const

describe('a dialog that sets a figure is titled by what it edits', () => {
  it.each([
    ['tank:new', null, 'Add a tank'],
    ['tank:10x54', {}, '10 × 54 in tank'],
    ['valve:0190', null, 'Add a valve'],
    ['valve:0190', { label: 'Metered, 1 in' }, 'Metered, 1 in'],
    ['price:salt-per-lb', null, 'Price of salt'],
    ['price:water-per-gal', null, 'Price of water'],
    ['price:salt-per-lb', 12, 'Price of salt'],
    ['bags', null, 'Bags in stock'],
    ['reserve', null, 'Reserve capacity'],
  ])('%s, set to %j: %s', (key, value, title) => expect(dialogTitle(key, value, US)).toBe(title))
})

describe('hours are written as the company’s locale writes a clock', () => {
  // CLDR 48, time format "short": h:mm a in en-US, HH:mm in en-GB.
  it.each([
    ['dayStart', '08:00', 'en-US', '8:00\u00a0AM'],
    ['dayEnd', '17:30', 'en-US', '5:30\u00a0PM'],
    ['dayStart', '08:00', 'en-GB', '08:00'],
  ])('%s %s in %s: %s', (key, value, locale, words) => expect(figureWords(key, value, { ...US, locale, currency: 'USD' })).toBe(words))
  it('and a value nobody has given is not set', () => expect(figureWords('dayStart', null, { ...US, currency: 'USD' })).toBe('not set'))
})
