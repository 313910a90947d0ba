import fc from 'fast-check'
import { expect, test } from 'vitest'
import { nearTerms } from './near-terms.ts'

// One slip by Damerau's classes (1964, Communications of the ACM 7/3): a letter too many, too few, another one, or two swapped.
test.each([
  ['orchrad', 'orchard'],
  ['ochard', 'orchard'],
  ['orcchard', 'orchard'],
  ['orchord', 'orchard'],
  ['prchard', 'orchard'],
  ['orchar', 'orchard'],
  ['5550127764', '5550127746'],
])('%s leads to %s', (slip, meant) => expect(nearTerms(slip)).toContain(meant))

test.each(['elm', '14', '168', '60511', '10x54', 'b12c', 'øå'])('%s leads nowhere: its neighbour is something else', (term) =>
  expect(nearTerms(term)).toEqual([]),
)

test('two slips are not forgiven', () => expect(nearTerms('ocrhadr')).not.toContain('orchard'))

test('each once, never the term itself, and a swap before the rest', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[a-z]{4,24}$/), (term) => {
      const near = nearTerms(term)
      return new Set(near).size === near.length && !near.includes(term)
    }),
  )
  expect(nearTerms('ornage')[0]).toBe('ronage')
  expect(nearTerms('ornage').slice(0, 5)).toContain('orange')
})
