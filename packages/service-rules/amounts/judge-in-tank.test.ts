import { wordsIn } from '@almanac/words/words-in'
import { expect, test } from 'vitest'
import { judgeInTank, type TankRoom } from './judge-in-tank.ts'
import { sayAmount } from './say-amount.ts'

const WORDS = { words: wordsIn('en-US', 'amount'), names: wordsIn('en-US', 'amountName'), locale: 'en-US' }
// A 10 × 54 in tank holds 0.92 × π/4 × 10² × 54 in³ = 3,902 in³ = 2.258 ft³ (the trade's rule of 0.92 of the plain cylinder).
const tank: TankRoom = { words: '10 × 54 in', volumeFt3: 2.258, heightIn: 54 }

test.each([
  // The usual fill of a 10 × 54 in is 1½ ft³ of resin and about 18 lb of gravel, with a tube of about the tank's height: common practice, no source.
  ['resin', 1.5, 'ft3', 'usual', 'usual'],
  ['resin', 42, 'L', 'usual', 'usual'],
  ['resin', 0.5, 'ft3', 'odd', 'odd'],
  ['resin', 1.9, 'ft3', 'odd', 'odd'],
  // A 14 × 65 in tank takes 3 ft³: on site the record may name the wrong tank, in the office it does not fit.
  ['resin', 3, 'ft3', 'impossible', 'odd'],
  ['resin', 15, 'ft3', 'impossible', 'impossible'],
  ['gravel', 18, 'lb', 'usual', 'usual'],
  ['gravel', 9, 'kg', 'usual', 'usual'],
  ['gravel', 60, 'lb', 'odd', 'odd'],
  ['gravel', 2000, 'lb', 'impossible', 'impossible'],
  ['tube', 52.6, 'in', 'usual', 'usual'],
  ['tube', 135, 'cm', 'usual', 'usual'],
  ['tube', 56, 'in', 'odd', 'odd'],
  ['tube', 40, 'in', 'odd', 'odd'],
  ['tube', 62, 'in', 'impossible', 'odd'],
  ['hardness', 99, 'gpg', 'usual', 'usual'],
] as const)('%s of %f %s: %s in the office, %s on site', (kind, value, unit, office, onSite) => {
  for (const [judged, state] of [
    [judgeInTank(kind, value, unit, tank), office],
    [judgeInTank(kind, value, unit, tank, { onSite: true }), onSite],
  ] as const) {
    expect(judged.state).toBe(state)
    if (judged.state !== 'usual') expect(sayAmount(judged.said, WORDS)).toMatch(/^[A-Z].*\.$/)
  }
})
