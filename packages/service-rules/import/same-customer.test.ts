import { describe, expect, test } from 'vitest'
import { keyed, type ListedPerson, likeness, MOST_SHARING, sharersOf } from './same-customer.ts'

const person = (part: Partial<ListedPerson>): ListedPerson => ({
  name: 'Ann Poe',
  reference: null,
  phones: [],
  emails: [],
  places: [],
  ...part,
})
const at = (street: string, postcode: string | null, town: string | null) => ({ street, postcode, town })

describe('two customers', () => {
  test.each<[string, Partial<ListedPerson>, Partial<ListedPerson>, ReturnType<typeof likeness>]>([
    [
      'name and phone, written otherwise',
      { name: 'Poe, Ann', phones: ['(555) 201-3344'] },
      { phones: ['555 201 3344'] },
      { surely: true, by: ['name', 'phone'] },
    ],
    [
      'a number that only one has',
      { reference: '17', emails: ['A@x.org'] },
      { emails: ['a@x.org'] },
      { surely: true, by: ['name', 'email'] },
    ],
    [
      'the address by postcode and town',
      { places: [at('1 Elm St', '84001', 'Lark')] },
      { places: [at('1 Elm Street', null, 'Lark')] },
      { surely: true, by: ['name', 'address'] },
    ],
    [
      'another name at the phone',
      { name: 'Bo Dow', phones: ['555 201 3344'] },
      { phones: ['555 201 3344'] },
      { surely: false, by: ['phone'] },
    ],
    ['two numbers', { reference: '17', phones: ['555 201 3344'] }, { reference: '18', phones: ['555 201 3344'] }, null],
    ['a name alone', {}, {}, null],
    ['no street is no address', { places: [at('', '84001', 'Lark')] }, { places: [at('', '84001', 'Lark')] }, null],
    ['streets of two towns', { places: [at('1 Elm St', null, 'Lark')] }, { places: [at('1 Elm St', null, 'Brack')] }, null],
  ])('%s', (_, one, other, expected) => {
    expect(likeness(keyed(person(one)), keyed(person(other)))).toEqual(expected)
    expect(likeness(keyed(person(other)), keyed(person(one)))).toEqual(expected)
  })
})

describe('a phone that many share', () => {
  const people = (count: number) => Array.from({ length: count }, (_, at) => person({ name: `Ann ${at}`, phones: ['555 000 0000'] }))
  const among = (all: readonly ListedPerson[]) => {
    const sharers = sharersOf()
    for (const one of all) sharers.add(one)
    return sharers
  }
  const found = (count: number) => among(people(count)).find(keyed(person({ phones: ['(555) 000-0000'] }))).length

  test('finds all who have it, and tells nobody from anybody beyond twenty', () => {
    expect([found(1), found(MOST_SHARING), found(MOST_SHARING + 1)]).toEqual([1, 20, 0])
  })

  test('of a whole list asks for no comparison of each with each', () => {
    // 4,000 with 4,000 were 16 million comparisons.
    const all = people(4000)
    const sharers = among(all)
    expect(all.flatMap((one) => sharers.find(keyed(one)))).toEqual([])
  })
})
