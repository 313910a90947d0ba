import { expect, test } from 'vitest'
import { formatMiles } from './distance.ts'

test.each([
  [6.24, 'us', '6.2 mi'],
  [6.24, 'metric', '10 km'],
  [1, 'metric', '1.6 km'],
  [42.5, 'us', '43 mi'],
  [0, 'us', '0 mi'],
  [null, 'us', 'not known'],
  [Number.NaN, 'us', 'not known'],
] as const)('%j miles, %s: %s', (miles, system, words) => {
  expect(formatMiles(miles, { locale: 'en-US', unitSystem: system })).toBe(words)
})
