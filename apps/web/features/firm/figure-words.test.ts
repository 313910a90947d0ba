import { describe, expect, it } from 'vitest'
import { dialogTitle } from './figure-words.ts'

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
