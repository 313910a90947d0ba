import { expect, it } from 'vitest'
import { unitAfter } from './amount-words.ts'

it.each([
  [4, 'bag', 'bags'],
  [0, 'bag', 'bags'],
  [1, 'bag', 'bag'],
  [0.5, 'bag', 'bag'],
  [-2, 'piece', 'pieces'],
  [-1, 'piece', 'piece'],
  [2, 'box', 'boxes'],
  [1.5, 'set', 'sets'],
  [300, 'lb', 'lb'],
  [16, 'fl oz', 'fl oz'],
  [2, 'pieces', 'pieces'],
  [2, 'm²', 'm²'],
])('%s %s is said with %s', (amount, unit, said) => expect(unitAfter(amount, unit)).toBe(said))
