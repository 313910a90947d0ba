import fc from 'fast-check'
import { expect, test } from 'vitest'
import { queryTerms, tokensFor } from './search-tokens.ts'

/** What the database does: each term must begin some token. */
function finds(query: string, texts: string[], phones: string[] = []): boolean {
  const tokens = tokensFor(texts, phones)
  return queryTerms(query).every((term) => tokens.some((token) => token.startsWith(term)))
}

const site = ['Orchard Lane 14', "Siobhán O'Brien-Müller", '10 x 54"', 'Mill bakery']
const phones = ['+44 1632 960123']

test.each([
  '54 orch',
  'orch 54',
  'ORCHARD',
  'chard',
  'lane 14',
  '10x54',
  '10 x 54"',
  '10×54',
  'x54',
  'obrien',
  "o'brien",
  'brien',
  'siobhan',
  'Siobhán',
  'muller',
  'baker',
  '960123',
  '0123',
  '01632 960123',
  '(01632) 960-123',
  '+44 1632 960123',
  '1632960123',
  '',
])('%j finds the site', (query) => expect(finds(query, site, phones)).toBe(true))

test.each(['12x52', 'orchid', '54 elm', '99', '0199', 'lanes'])('%j does not', (query) => expect(finds(query, site, phones)).toBe(false))

test('tokens are unique, sorted, folded and at most 24 characters long', () => {
  const tokens = tokensFor(['Straße', 'Straße', 'Llanfairpwllgwyngyllgogerychwyrndrobwll'], [])
  expect(tokens).toContain('strasse')
  expect(tokens).toContain('asse')
  expect(new Set(tokens).size).toBe(tokens.length)
  expect([...tokens].sort()).toEqual(tokens)
  expect(Math.max(...tokens.map((token) => token.length))).toBe(24)
})

test('a phone is found from three digits on, not from two', () => {
  expect(tokensFor([], ['555 0142'])).toEqual(['0142', '142', '50142', '550142', '5550142'].sort())
})

test('any part of two or more letters of any word finds it', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[a-zäöüéñß0-9]{2,40}$/), fc.nat(), fc.nat(), (word, from, length) => {
      const start = from % (word.length - 1)
      const end = start + 2 + (length % (word.length - start - 1))
      return finds(word.slice(start, end), [`12 ${word} Road`])
    }),
    { numRuns: 5000 },
  )
})

test('any three digits in a row of a phone number find it', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[1-9][0-9]{6,14}$/), fc.nat(), (digits, from) => {
      const start = from % (digits.length - 2)
      return finds(digits.slice(start, start + 3), [], [`+${digits.slice(0, 2)} (${digits.slice(2, 5)}) ${digits.slice(5)}`])
    }),
  )
})
