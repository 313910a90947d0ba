import { erasePatterns, type Traces } from '@almanac/service-rules/erase/erase-pattern'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { Chance } from '../support/fuzz/random.ts'
import { inspector } from '../support/two-firms.ts'

// What is erased is what the pattern finds; the hints only spare the look. So nothing may be found that no hint lets through: PostgreSQL is asked, over spellings as people type them.

const SEED = 20_261_130
const TEXTS = 4_000
const PEOPLE: Traces[] = [
  { names: ['Hanna Vale'], phones: ['+1 (602) 555-0134'], emails: ['hanna.o_vale@orchard.example'] },
  { names: ['Jörg-Peter Großmann'], phones: ['5550134'], emails: ['JÖRG@über.example'] },
  { names: ['Ó Faoláin', 'de la Cruz y Núñez'], phones: ['0049 30 1234567'], emails: ['100%@vale.example'] },
  { names: ['李 小龙', 'İpek Kırmızı', 'x y'], phones: [], emails: ['a\\b@vale.example'] },
]
const BETWEEN = ['', ' ', '-', ', ', '’', '\n', ' – ', '_', '%', '.']

/** A trace as somebody might have typed it, between other words. */
function typed(text: string, chance: Chance): string {
  const words = chance.happens(0.3) ? [...text].filter((sign) => /[\p{L}\p{N}]/u.test(sign)) : text.split(/[ -]/)
  const order = chance.happens(0.3) ? [words.at(-1) ?? '', ...words.slice(0, -1)] : words
  const bare = chance.happens(0.4) ? order.map((one) => one.normalize('NFD').replace(/\p{M}/gu, '')) : order
  const cased = bare.map((one) => chance.one([one, one.toUpperCase(), one.toLowerCase()]))
  const joint = chance.one(BETWEEN)
  return `${chance.one(['', 'call ', '(', 'x', 'ÄÖ '])}${cased.join(joint)}${chance.one(['', ' back', ')', '7', '\n'])}`
}

let db: pg.Client
beforeAll(async () => {
  db = await inspector()
})
afterAll(() => db.end())

test(`of ${TEXTS} texts with seed ${SEED} each that a pattern finds is let through by a hint, and many are found`, async () => {
  const chance = new Chance(SEED)
  let found = 0
  for (const person of PEOPLE) {
    const traces = [...person.names, ...person.phones, ...person.emails]
    const texts = Array.from({ length: TEXTS / PEOPLE.length }, () => typed(chance.one(traces), chance))
    for (const shared of [[], person.names]) {
      const { everywhere, nearby } = erasePatterns(person, shared)
      for (const search of [everywhere, nearby]) {
        if (!search) continue
        const { rows } = await db.query<{ text: string; hinted: boolean }>(
          'select text, lower(text) like any ($3) as hinted from unnest($1::text[]) as text where text ~* $2',
          [texts, search.pattern, search.hints],
        )
        found += rows.length
        expect(rows.filter((row) => !row.hinted).map((row) => row.text)).toEqual([])
      }
    }
  }
  expect(found).toBeGreaterThan(TEXTS / 10)
})
