import { sayAmount } from '@almanac/service-rules/amounts/say-amount'
import { wordsIn } from '@almanac/words/words-in'
import { describe, expect, it } from 'vitest'
import { AMOUNT_KINDS, type AmountKind, type AmountRule, moneyRule, stockRule } from './amount-kinds.ts'
import { judgeAmount } from './judge-amount.ts'
import { readAmount } from './read-amount.ts'

// Expected values are what each text means to the person who types it, worked out by hand; units by their exact definitions.
const WORDS = { words: wordsIn('en-US', 'amount'), names: wordsIn('en-US', 'amountName') }
const value = (kind: AmountKind | AmountRule, text: string, options = {}) => {
  const found = readAmount(kind, text, options)
  return found.state === 'read' ? found.value : found.state
}
const sentence = (kind: AmountKind | AmountRule, text: string, options = {}) => {
  const found = readAmount(kind, text, options)
  const said = found.state === 'refused' ? found.said : found.state === 'read' ? found.odd : null
  return said && sayAmount(said, { ...WORDS, locale: 'en-US' })
}

describe('the same texts in every kind of amount', () => {
  const dollars = moneyRule('USD', 2)
  const bags = stockRule('bag')
  const table: [AmountKind | AmountRule, string, Record<string, number | 'empty' | 'refused'>][] = [
    [
      'payload',
      'lb',
      { '1 1/2': 1.5, '1½': 1.5, '1,200': 1200, '1.5': 1.5, '1,5': 1.5, '1 200': 1200, '−3': 'refused', '99999': 'refused' },
    ],
    [bags, 'bag', { '1 1/2': 1.5, '1½': 1.5, '1,200': 1200, '1.5': 1.5, '1,5': 1.5, '1 200': 1200, '−3': 'refused', '99999': 99_999 }],
    [dollars, 'USD', { '1 1/2': 1.5, '1½': 1.5, '1,200': 1200, '1.5': 1.5, '1,5': 1.5, '1 200': 1200, '−3': 'refused', '99999': 99_999 }],
    [
      'hardness',
      'gpg',
      { '1 1/2': 1.5, '1½': 1.5, '1,200': 'refused', '1.5': 1.5, '1,5': 1.5, '1 200': 'refused', '−3': 'refused', '99999': 'refused' },
    ],
    [
      'reminderDays',
      'days',
      { '1 1/2': 'refused', '1½': 'refused', '1,200': 'refused', '1.5': 'refused', '1,5': 'refused', '−3': 'refused', '365': 365 },
    ],
    [
      'rebedsPerMonth',
      'rebeds',
      { '1 1/2': 'refused', '1½': 'refused', '1,200': 1200, '1.5': 'refused', '1 200': 1200, '−3': 'refused', '99999': 99_999 },
    ],
    ['share', '%', { '1 1/2': 1.5, '1½': 1.5, '1,200': 'refused', '1.5': 1.5, '1,5': 1.5, '60%': 60, '60 %': 60, '−3': 'refused' }],
    ['longitude', '°', { '-88.4215': -88.4215, '−88,4215': -88.4215, '1.5': 1.5, '99999': 'refused' }],
  ]
  it.each(
    table.flatMap(([kind, unit, texts]) =>
      Object.entries({ ...texts, '': 'empty' as const, '   ': 'empty' as const, abc: 'refused' as const }).map(
        ([text, meant]) => [unit, text, meant, kind] as const,
      ),
    ),
  )('%s: “%s” is %s', (unit, text, meant, kind) => expect(value(kind, text, { unit })).toBe(meant))

  it('takes no-break, narrow and thin spaces between thousands', () => {
    for (const space of ['\u00a0', '\u202f', '\u2009', '\u2007']) expect(value('payload', `1${space}200`)).toBe(1200)
  })
})

describe('comma and point by the locale of the company', () => {
  it.each([
    ['1,200', 'en-US', 1200],
    ['1,200', 'de-DE', 1.2],
    ['1.200', 'de-DE', 1200],
    ['1.200', 'en-US', 1.2],
    ['1.200', 'en-GB', 1.2],
    ['1,200', 'fr-FR', 1.2],
    ['1,2', 'en-US', 1.2],
    ['1.2', 'de-DE', 1.2],
    ['1,200.5', 'de-DE', 1200.5],
    ['1.200,5', 'en-US', 1200.5],
    ['0,125', 'en-US', 0.125],
    ['0.125', 'de-DE', 0.125],
    ['1,234,567', 'de-DE', 1_234_567],
    ["1'200", 'de-CH', 1200],
    ['1’200', 'de-CH', 1200],
    ['1,200', 'no such locale', 1200],
  ])('%s in %s', (text, locale, meant) => expect(value(moneyRule('XXX', 3), text, { locale })).toBe(meant))
  it.each(['1,20,5', '1 20', '1,2.3,4', '12,34.5', '1..2', '1 2 3'])('“%s” is no number anywhere', (text) => {
    for (const locale of ['en-US', 'de-DE']) expect(value('payload', text, { locale })).toBe('refused')
  })
})

describe('money', () => {
  const dollars = moneyRule('USD', 2)
  it.each([
    ['1,200', 1200],
    ['1,200.50', 1200.5],
    ['12.5', 12.5],
    ['12,50', 12.5],
    ['$1,200', 1200],
    ['1200 USD', 1200],
    ['1 200,50', 1200.5],
    ['0', 0],
  ])('“%s” is %d dollars', (text, meant) => expect(value(dollars, text)).toBe(meant))
  // ISO 4217: two decimals in a dollar, none in a yen, three in a dinar.
  it('is not rounded in silence', () => {
    for (const text of ['12.345', '1.200', '1/3']) expect(sentence(dollars, text)).toMatch(/decimals/)
    expect(sentence(moneyRule('JPY', 0), '12.5')).toMatch(/decimals/)
    expect(value(moneyRule('JPY', 0), '12,500')).toBe(12_500)
    expect(value(moneyRule('KWD', 3), '1.250')).toBe(1.25)
    expect(sentence(moneyRule('EUR', 2), '1,200', { locale: 'de-DE' })).toMatch(/decimals/)
  })
})

describe('units', () => {
  it.each([
    ['hardness', '18', 'gpg', 18, 18, 'gpg'],
    ['hardness', '18 gpg', 'gpg', 18, 18, 'gpg'],
    ['hardness', '308.1', 'mg/L', 17.99856, 308.1, 'mg/L'],
    ['hardness', '310 ppm', 'gpg', 18.1095, 310, 'mg/L'],
    ['hardness', '17 °dH', 'gpg', 17.7249, 17, 'dH'],
    ['resin', '42 L', 'ft3', 1.48322, 42, 'L'],
    ['tube', '137', 'cm', 53.937, 137, 'cm'],
    ['tube', '4\'6"', 'in', 54, 54, 'in'],
    ['tube', '4 ft 6½ in', 'cm', 54.5, 138.43, 'cm'],
    ['tankMeasure', '4 ft', 'in', 48, 4, 'ft'],
    ['pressure', '4', 'bar', 58.0151, 4, 'bar'],
    ['waterTemperature', '10 °C', 'F', 50, 10, 'C'],
    ['breakMinutes', '1 h 30', 'min', 90, 90, 'min'],
    ['breakMinutes', '1:30', 'min', 90, 90, 'min'],
    ['breakMinutes', '1.5 h', 'min', 90, 90, 'min'],
    ['breakMinutes', '45 minutes', 'min', 'refused', 0, ''],
    ['people', '4 people', 'people', 4, 4, 'people'],
    ['leadDays', '1 day', 'days', 1, 1, 'days'],
  ] as const)('%s: “%s” beside %s', (kind, text, unit, kept, typed, typedUnit) => {
    const found = readAmount(kind, text, { unit })
    if (kept === 'refused') expect(found.state).toBe('refused')
    else expect(found).toMatchObject({ state: 'read', entered: { unit: typedUnit, text } })
    if (found.state !== 'read') return
    expect(found.value).toBeCloseTo(kept as number, 3)
    expect(found.entered.value).toBeCloseTo(typed, 6)
  })
  it('refuses another unit, and thousands beside nothing', () => {
    expect(sentence('hardness', '18 bananas')).toMatch(/“bananas” is no unit here.*gpg, mg\/L/)
    expect(sentence('hardness', '42 L')).toMatch(/no unit here/)
    expect(sentence('hardness', '10x54')).toMatch(/no unit here/)
    expect(value(stockRule('bag'), '4 bags')).toBe(4)
    expect(value(stockRule('box'), '4 boxes')).toBe(4)
  })
  it('keeps what was typed, also as a fraction in another unit', () => {
    expect(readAmount('hardness', ' 1 1/2 ', { unit: 'mg/L' })).toMatchObject({ entered: { value: 1.5, unit: 'mg/L', text: '1 1/2' } })
  })
})

describe('what is likely', () => {
  it('asks back what is odd and refuses what cannot be, in the unit that was typed', () => {
    expect(sentence('hardness', '99')).toBe('99 gpg is unusual: mostly it’s 0 gpg to 60 gpg. Is it right? Correct it, or say why it is so.')
    expect(sentence('hardness', '99999')).toBe(
      'A hardness of 99,999 gpg can’t be right: the most is 200 gpg. Check the number and its unit.',
    )
    expect(sentence('hardness', '1500', { unit: 'mg/L' })).toMatch(/^1,500 mg\/L is unusual: mostly it’s 0 mg\/L to 1,030 mg\/L/)
    expect(sentence('hardness', '−3')).toMatch(/can’t be below zero/)
    expect(sentence('pressure', '140')).toMatch(/140 psi is unusual/)
    expect(sentence('waterTemperature', '−4', { unit: 'C' })).toMatch(/the least is 0°?\s?°?C/)
    expect(sentence('ph', '15')).toMatch(/A pH of 15 can’t be right/)
    expect(sentence('resin', '0')).toMatch(/must be more than 0/)
    expect(sentence('people', '2.5')).toMatch(/whole number/)
  })
  it('lets a judge that knows the tank speak first', () => {
    const judge = () => ({ state: 'odd', said: { key: 'gravelMuch', texts: { tank: '10 × 54 in' } } }) as const
    expect(readAmount('resin', '3', { judge })).toMatchObject({ state: 'read', odd: { key: 'gravelMuch' } })
  })
  it('gives every kind bounds in order, an example that is usual, and a source', () => {
    for (const [kind, rule] of Object.entries(AMOUNT_KINDS) as [AmountKind, AmountRule][]) {
      expect(rule.least, kind).toBeLessThan(rule.most)
      if (rule.usual) expect(rule.usual[0] >= rule.least && rule.usual[1] <= rule.most, kind).toBe(true)
      expect(readAmount(kind, rule.example), kind).toMatchObject({ state: 'read', odd: null })
      expect(rule.source.length, kind).toBeGreaterThan(10)
      for (const bad of [Number.NaN, Number.POSITIVE_INFINITY])
        expect(judgeAmount(kind, bad, rule.dimension.units[0] ?? '').state, kind).toBe('impossible')
    }
  })
})
