import { expect, test } from 'vitest'
import { rankSite, type SiteTexts } from './rank-site.ts'

const site: SiteTexts = {
  place: ['Sluice Road 58', 'Sluice Road 58'],
  area: ['Nether Lark', '60511'],
  people: [
    { name: 'Hester Vance', phone: '(555) 012-7746' },
    { name: 'Ida Sluys', phone: '+1 555 013 5558' },
  ],
  reference: 'B204',
}
const rank = (...terms: string[]) => rankSite(site, { terms: terms.map((term) => term.split('|')) })

test.each([
  [['hester'], 'person', 0],
  [['ida'], 'person', 1],
  [['127746'], 'person', 0],
  [['555013'], 'person', 1],
  [['b204'], 'person', null],
  [['sluice', 'vance'], 'person', 0],
  [['sluice'], 'address', null],
  [['58', 'road'], 'address', null],
  [['lark'], 'address', null],
  [['10x54'], 'tank', null],
] as const)('%j is met by a %s', (terms, by, person) => expect(rank(...terms)).toMatchObject({ by, person }))

test('a whole word is a better answer than its beginning, and that than its middle; what was typed better than another spelling', () => {
  const scores = [rank('sluice'), rank('slui'), rank('luic'), rank('10x54')].map((one) => one.score)
  expect(scores).toEqual([...scores].sort((a, b) => a - b))
  expect(new Set(scores).size).toBe(4)
  expect(rank('road').score).toBeLessThan(rank('rd|road').score)
  expect(rank('road').score).toBeLessThan(rank('lark').score)
})
