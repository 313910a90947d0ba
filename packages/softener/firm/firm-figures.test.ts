import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { SPEAKING } from '../../../tests/support/speaking.ts'
import { rebedKit } from '../kit/rebed-kit.ts'
import { figureValue, usualSource } from './figure-value.ts'
import { mergeFigures } from './merge-figures.ts'
import { PLAIN_KEYS, setFigure } from './read-figure.ts'
import { tankKey } from './read-tank.ts'
import { USUAL_FIGURES } from './usual-figures.ts'

const seed = Number(process.env.FC_SEED ?? 20_261_125)

const tank = (resin: number, gravel: number) => ({
  diameterIn: 10,
  heightIn: 54,
  resinFt3: { usual: resin },
  gravelLb: { usual: gravel },
  openingsIn: [2.5],
})
const valve = {
  label: 'Dial valve',
  labelWords: ['dial'],
  control: 'timer',
  tubeOdIn: 1.05,
  backwashGpm: [1.5, 2],
  refillGpm: 0.4,
  tubeRule: 'flush',
  seals: 'neck and tube',
} as const

const reason = (key: string, value: unknown) => {
  const set = setFigure(USUAL_FIGURES, key, value)
  return set.ok ? 'stands' : set.reason
}

describe('a firm’s figures', () => {
  test('are the usual ones where it set none', () => {
    expect(mergeFigures([])).toEqual({ figures: USUAL_FIGURES, refused: [] })
  })

  test('take a usual one’s place, or stand beside it, and say that they are the firm’s', () => {
    const { figures, refused } = mergeFigures([
      { key: 'tank:10x54', value: tank(1.25, 0) },
      { key: 'tank:11x50', value: { ...tank(1.5, 20), diameterIn: 11, heightIn: 50 } },
      { key: 'valve:0197b3a2', value: { ...valve, label: 'Old dial valve' } },
    ])
    expect(refused).toEqual([])
    expect(figures.tanks).toHaveLength(USUAL_FIGURES.tanks.length + 1)
    expect(figures.tanks.map(tankKey).slice(3, 7)).toEqual(['tank:10x44', 'tank:10x54', 'tank:11x50', 'tank:12x52'])
    expect(figures.tanks[4]).toMatchObject({ resinFt3: { min: 1.25, usual: 1.25, max: 1.25 }, source: 'your company’s own value' })
    expect(figures.valves.at(-1)).toMatchObject({ id: '0197b3a2', label: 'Old dial valve', control: 'timer', backwashGpm: [1.5, 2] })
  })

  test.each([
    ['allowance:iron', Number.NaN, 'An iron allowance of something that is no number is outside 0 to 20 gpg per mg/L.'],
    ['allowance:iron', '4', 'An iron allowance must be a number, 0 to 20 gpg per mg/L.'],
    ['gravel-from-ft3', -1, 'The resin volume for gravel of -1 is outside 0 to 500 ft³.'],
    ['tank:10x54', tank(2.5, 18), 'A 10 × 54 in tank holds 2.26 ft³: this much resin and gravel don’t fit.'],
    ['tank:10x54', tank(0.0099, 18), 'Resin of 0.0099 is outside 0.01 to 500 ft³.'],
    ['tank:10x54', tank(501, 18), 'Resin of 501 is outside 0.01 to 500 ft³.'],
    ['tank:10x54', tank(1, 20_001), 'Gravel of 20001 is outside 0 to 20000 lb.'],
    ['tank:12x52', tank(1, 18), 'The tank’s size doesn’t match its row.'],
    ['bags', [1, 1], 'The same bag size is listed twice.'],
    ['bags', [], 'Bag sizes must be a list of 1 to 6.'],
    [
      'curve:gel-8',
      [
        [5, 20],
        [10, 19],
      ],
      'Salt and capacity must rise from point to point; 10 lb with 19 kgr does not.',
    ],
    [
      'curve:gel-8',
      [
        [2, 12],
        [10, 29],
      ],
      '2 lb of salt cannot give 12 kgr: by charge it is at most 12.0 kgr.',
    ],
    ['backwash:gpm-ft2', { min: 5, usual: 4, max: 8 }, 'The usual backwash must be between the lowest and the highest.'],
    ['reserve', { kind: 'weeks', days: 1 }, 'The reserve is a number of days or a share of the capacity. Say which.'],
    ['valve:x', { label: 'Dial' }, 'Words on the label must be a list of 0 to 20.'],
    ['nonsense', 1, 'There’s no value called “nonsense”.'],
    ['x'.repeat(70), 1, `There’s no value called “${'x'.repeat(60)}”.`],
    ['tank:10x54', { ...tank(1, 18), resinFt3: { min: 1.2, usual: 1, max: 2 } }, 'Resin: the usual 1 ft³ must lie between 1.2 and 2.'],
  ])('%s of %j is refused with a sentence', (key, value, sentence) => {
    expect(reason(key, value)).toBe(sentence)
    const { figures, refused } = mergeFigures([{ key, value }])
    expect(figures).toEqual(USUAL_FIGURES)
    expect(refused).toEqual([{ key, reason: `${sentence} The default counts.` }])
  })

  /** Each bound of an entry by itself: the value at the bound stands, the one beyond it does not. */
  test.each<[string, (n: number) => unknown, number, number]>([
    ['allowance:iron', (n) => n, 0, 20],
    ['allowance:manganese', (n) => n, 0, 20],
    ['gravel-from-ft3', (n) => n, 0, 500],
    ['outlet-limit-gpg', (n) => n, 0.1, 10],
    ['backwash:expansion', (n) => n, 0.1, 1.5],
    ['backwash:gpm-ft2', (n) => ({ min: n, usual: n, max: n }), 0.5, 30],
    ['reserve', (n) => ({ kind: 'days', days: n }), 0, 7],
    ['reserve', (n) => ({ kind: 'share', share: n }), 0, 0.8],
    ['bags', (n) => [n], 0.05, 50],
    ['price:salt-per-lb', (n) => n, 0, 100_000],
    ['price:water-per-gal', (n) => n, 0, 100_000],
    ['valve:x', (n) => ({ ...valve, tubeOdIn: n }), 0.5, 6],
    ['valve:x', (n) => ({ ...valve, refillGpm: n }), 0.05, 20],
    ['valve:x', (n) => ({ ...valve, backwashGpm: [n] }), 0.2, 200],
    ['tank:10x54', (n) => ({ ...tank(1.5, 18), openingsIn: [n] }), 1, 12],
    [
      'curve:gel-8',
      (n) => [
        [n, 0.5],
        [n + 0.5, 1],
      ],
      0.5,
      39.5,
    ],
  ])('%s stands from its least to its most, and not beyond (bounds are our own)', (key, of, least, most) => {
    expect([reason(key, of(least)), reason(key, of(most))]).toEqual(['stands', 'stands'])
    expect(reason(key, of(least - 0.001))).not.toBe('stands')
    expect(reason(key, of(most * 1.001 + 0.001))).not.toBe('stands')
  })

  test('texts and lists of a card are held to the room they have', () => {
    const long = (n: number) => 'x'.repeat(n)
    for (const [part, most] of [
      ['label', 80],
      ['tubeRule', 300],
      ['seals', 300],
    ] as const) {
      expect(reason('valve:x', { ...valve, [part]: long(most) })).toBe('stands')
      expect(reason('valve:x', { ...valve, [part]: long(most + 1) })).toContain(`${most} characters`)
    }
    expect(reason('valve:x', { ...valve, labelWords: Array(20).fill(long(40)) })).toBe('stands')
    expect(reason('valve:x', { ...valve, labelWords: Array(21).fill('a') })).toContain('list of 0 to 20')
    expect(reason('valve:x', { ...valve, labelWords: [long(41)] })).toContain('40 characters')
    expect(reason('valve:x', { ...valve, backwashGpm: Array(20).fill(2) })).toBe('stands')
    expect(reason('valve:x', { ...valve, backwashGpm: Array(21).fill(2) })).toContain('list of 0 to 20')
    expect(reason('bags', [6, 5, 4, 3, 2, 1])).toBe('stands')
    expect(reason('bags', [7, 6, 5, 4, 3, 2, 1])).toContain('list of 1 to 6')
    expect(reason('tank:10x54', { ...tank(1.5, 18), openingsIn: [2, 2.5, 3, 4] })).toBe('stands')
    expect(reason('tank:10x54', { ...tank(1.5, 18), openingsIn: [2, 2.5, 3, 4, 5] })).toContain('list of 1 to 4')
    const points = (n: number) => Array.from({ length: n }, (_, at) => [at + 5, 10 + at])
    expect(reason('curve:gel-8', points(12))).toBe('stands')
    expect(reason('curve:gel-8', points(13))).toContain('list of 2 to 12')
    expect(reason('curve:gel-8', points(1))).toContain('list of 2 to 12')
  })

  test('come back from the figures as they were set', () => {
    const values: Record<string, unknown> = {
      'tank:10x54': { ...tank(1.25, 12), resinFt3: { min: 1, usual: 1.25, max: 1.5 }, gravelLb: { min: 10, usual: 12, max: 15 } },
      'valve:x': valve,
      bags: [1, 0.5],
      'curve:fine-mesh': [
        [5, 20],
        [10, 30],
      ],
      reserve: { kind: 'share', share: 0.25 },
      'backwash:gpm-ft2': { min: 4, usual: 6, max: 7 },
      ...Object.fromEntries(
        ['allowance:iron', 'allowance:manganese', 'gravel-from-ft3', 'outlet-limit-gpg', 'price:salt-per-lb', 'price:water-per-gal'].map(
          (key) => [key, 3],
        ),
      ),
      'backwash:expansion': 0.6,
    }
    const { figures } = mergeFigures(Object.entries(values).map(([key, value]) => ({ key, value })))
    for (const [key, value] of Object.entries(values)) expect([key, figureValue(figures, key)]).toEqual([key, value])
    for (const key of [...PLAIN_KEYS, 'tank:10x54', 'valve:usual-meter']) expect(usualSource(USUAL_FIGURES, key)).not.toBe('')
  })

  test('stay numbers whatever is sent', () => {
    const key = fc.oneof(fc.constantFrom(...PLAIN_KEYS, 'tank:10x54', 'valve:x'), fc.string())
    fc.assert(
      fc.property(fc.array(fc.record({ key, value: fc.anything() }), { maxLength: 6 }), (overrides) => {
        const { figures } = mergeFigures(overrides)
        expect(JSON.stringify(figures)).toBe(
          JSON.stringify(figures, (_, value) => (typeof value === 'number' && !Number.isFinite(value) ? 'broken' : value)),
        )
        expect(rebedKit({ diameterIn: 10, heightIn: 54, figures, ...SPEAKING }).ok).toBe(true)
      }),
      { seed, numRuns: 400 },
    )
  })
})
