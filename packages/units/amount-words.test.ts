import { expect, it } from 'vitest'
import { formatAmount } from './amount-words.ts'

it.each([
  [4, 'bag', '4 bags'],
  [0, 'bag', '0 bags'],
  [1, 'bag', '1 bag'],
  [0.5, 'bag', '0.5 bag'],
  [-2, 'piece', '-2 pieces'],
  [-1, 'piece', '-1 piece'],
  [2, 'box', '2 boxes'],
  [1.5, 'set', '1.5 sets'],
  [1300, 'lb', '1,300 lb'],
  [16, 'fl oz', '16 fl oz'],
  [2, 'pieces', '2 pieces'],
  [2, 'm²', '2 m²'],
  [Number.NaN, 'bag', 'not known'],
])('%s of %s is said as %s', (amount, unit, said) => expect(formatAmount(amount, unit, { locale: 'en-US' })).toBe(said))
