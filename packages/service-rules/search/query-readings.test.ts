import { expect, test } from 'vitest'
import { queryReadings } from './query-readings.ts'

const reads = (query: string) => queryReadings(query).map(({ terms, kinds }) => [terms.map((term) => term.join('|')).join(' '), ...kinds])

test.each([
  ['', []],
  ['  ', []],
  ['Vance', [['vance']]],
  ['14 Orchard Ln', [['14 orchard ln|lane']]],
  ['mill road', [['mill road|rd']]],
  // One number, however it is grouped, and its last nine digits, which are the same with and without the country's code.
  ['(555) 012-7746', [['5550127746'], ['550127746'], ['555 012 7746']]],
  ['+1 555 01 27 746', [['15550127746'], ['550127746'], ['555 01 27 746']]],
  ['127746', [['127746'], ['127746']]],
  // Too short for a telephone number.
  ['12 54', [['12 54']]],
  ['repair', [['repair'], ['', 'repair']]],
  ['rebed orchard', [['rebed orchard'], ['orchard', 'rebed']]],
  ['annual visit sluice', [['annual visit sluice'], ['sluice', 'annual-visit']]],
])('%j is read as %j', (query, readings) => expect(reads(query)).toEqual(readings))

test('more than eight words narrow nothing further', () => {
  expect(queryReadings('a b c d e f g h i j')[0]?.terms).toHaveLength(8)
})
