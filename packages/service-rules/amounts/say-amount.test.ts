import { AMOUNT_KINDS, type AmountKind } from '@almanac/units/amount-kinds'
import { judgeAmount } from '@almanac/units/judge-amount'
import { wordsIn } from '@almanac/words/words-in'
import { expect, test } from 'vitest'
import { judgeInTank } from './judge-in-tank.ts'
import { sayAmount } from './say-amount.ts'

const spoken = (locale: string) => ({ words: wordsIn(locale, 'amount'), names: wordsIn(locale, 'amountName'), locale })

test('an unusual amount is asked back in the reader’s language, its numbers as the company’s region writes them', () => {
  const judged = judgeAmount('hardness', 99.5, 'gpg')
  if (judged.state === 'usual') throw new Error('99.5 gpg is unusual')
  expect(sayAmount(judged.said, spoken('en-US'))).toBe(
    '99.5 gpg is unusual: mostly it’s 0 gpg to 60 gpg. Is it right? Correct it, or say why it is so.',
  )
  // Decimals with a point in Mexico and the United States, with a comma in Spain: Unicode CLDR.
  expect(sayAmount(judged.said, spoken('es-US'))).toBe(
    '99.5 gpg no es usual: casi siempre es de 0 gpg a 60 gpg. ¿Es correcto? Corríjalo, o diga por qué es así.',
  )
  expect(sayAmount(judged.said, spoken('es-ES'))).toContain('99,5 gpg no es usual')
})

test('what does not go into the tank says so, and what else may be wrong', () => {
  const tank = { words: '10 × 54 in', volumeFt3: 2.258, heightIn: 54 }
  const judged = judgeInTank('resin', 3, 'ft3', tank, { onSite: true })
  if (judged.state === 'usual') throw new Error('3 ft³ do not go into 2.258 ft³')
  expect(sayAmount(judged.said, spoken('es-US'))).toBe(
    'Tanta resina no cabe en un tanque de 10 × 54 in. O el tanque no es el registrado. ¿Es correcto? Corríjalo, o diga por qué es así.',
  )
})

test.each(['en-US', 'es-US'])('%s: every kind of amount that is too much or below the least has its sentence', (locale) => {
  for (const [kind, { most, least, dimension }] of Object.entries(AMOUNT_KINDS))
    for (const value of [most * 2 + 1, least - 1, Number.NaN]) {
      const judged = judgeAmount(kind as AmountKind, value, dimension.units[0] ?? '')
      if (judged.state !== 'impossible') throw new Error(`${value} is possible for ${kind}`)
      expect(sayAmount(judged.said, spoken(locale))).not.toMatch(/amount\.|amountName|\{|undefined|NaN| {2}/)
    }
})
