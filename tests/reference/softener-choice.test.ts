import { type OwnerQuestion, ownerOrFirm } from '@almanac/softener/choice/owner-or-firm'
import { CLEANED_IN_VAIN_YEARS, rebedCleanReplace, UNIT_LIVES_YEARS, type WayInput } from '@almanac/softener/choice/rebed-clean-replace'
import { quantileOf, spreadOf, thinned } from '@almanac/softener/choice/spread'
import { type WhichResinInput, whichResin } from '@almanac/softener/choice/which-resin'
import { yearlyRunning } from '@almanac/softener/choice/yearly-running'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { wordsIn } from '@almanac/words/words-in'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CARD } from '../support/speaking.ts'

const OWNER = wordsIn('en-US', 'ownerRebed')

const seed = Number(process.env.FC_SEED ?? 20_260_104)
console.info(`softener choice: fast-check seed ${seed} (set FC_SEED to change it)`)

const value = <T>(result: { ok: true; value: T } | { ok: false; reason: string }): T => {
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

describe('spread of equally likely figures', () => {
  it('1 to 10: a tenth below 1.5, half below 5.5, nine tenths below 9.5 (midpoint rule, Hazen 1914)', () => {
    const ten = [10, 1, 2, 3, 4, 5, 6, 7, 8, 9]
    expect(spreadOf(ten)).toEqual({ low: 1.5, middle: 5.5, high: 9.5, mean: 5.5 })
    expect(quantileOf([7], 0.9)).toBe(7)
  })
  it('thinned keeps the middle and the mean; nothing and no number give no spread', () => {
    const many = Array.from({ length: 1000 }, (_, i) => i)
    expect(spreadOf(thinned(many, 20))?.mean).toBeCloseTo(499.5, 0)
    expect(spreadOf([])).toBeNull()
    expect(spreadOf([1, Number.NaN])).toBeNull()
  })
})

describe('salt and water of a year', () => {
  it('18 gpg × 138 gal a day (Residential End Uses of Water 2016) at 10 lb/ft³ for 29.0 kgr (data sheets): 312.8 lb', () => {
    const running = value(
      yearlyRunning('gel-8', {
        hardnessGpg: 18,
        ironMgL: 0,
        manganeseMgL: 0,
        gallonsPerDay: 138,
        saltLbFt3: 10,
        figures: USUAL_FIGURES,
        speaking: CARD,
      }),
    )
    // 365.25 × 138 × 18 / 29,000 = 31.285 ft³ regenerated, at 10 lb each.
    expect(running.saltLb).toBeCloseTo(312.85, 1)
  })
  it('fine mesh takes less salt at the same dose: 31.5 against 29.0 kgr at 10 lb/ft³ (Keller, Basic Ion Exchange, part 2, table 3)', () => {
    const salt = (kind: 'gel-8' | 'fine-mesh') =>
      value(yearlyRunning(kind, { hardnessGpg: 18, gallonsPerDay: 138, saltLbFt3: 10, figures: USUAL_FIGURES, speaking: CARD })).saltLb
    expect(salt('fine-mesh') / salt('gel-8')).toBeCloseTo(29 / 31.5, 6)
  })
  it('refuses without a hardness', () =>
    expect(yearlyRunning('gel-8', { hardnessGpg: null, gallonsPerDay: 138, figures: USUAL_FIGURES, speaking: CARD })).toMatchObject({
      ok: false,
    }))
})

const RESIN: WhichResinInput = {
  speaking: CARD,
  hardnessGpg: 18,
  ironMgL: 0,
  gallonsPerDay: 138,
  figures: { ...USUAL_FIGURES, saltPriceMinorPerLb: null, waterPriceMinorPerGal: null },
  livesYears: [10],
  longerTen: [1.25],
  rebedMinor: 60_000,
  kitMoreMinor: { 'gel-8': 0, 'gel-10': 7_500, 'fine-mesh': 6_000 },
}

describe('which resin', () => {
  it('600 over 10 years are 60 a year; 675 over 12½ are 54: 10% is cheapest while it lasts a quarter longer', () => {
    const { options, cheapest } = value(whichResin(RESIN))
    expect(options.map((one) => one.perYear?.mean)).toEqual([6_000, 5_400, 6_600])
    expect(options.map((one) => one.chanceCheapest)).toEqual([0, 1, 0])
    expect(cheapest).toBe('gel-10')
  })
  it('and not while it lasts as long: the doubt about the gain is the doubt about the answer', () => {
    expect(value(whichResin({ ...RESIN, longerTen: [1] })).cheapest).toBe('gel-8')
    // Break-even at 675/600 = 1.125: three of four equally likely gains lie above it.
    const { options } = value(whichResin({ ...RESIN, longerTen: [1, 1.2, 1.3, 1.4] }))
    expect(options.map((one) => one.chanceCheapest)).toEqual([0.25, 0.75, 0])
  })
  it('salt at 0.20 a lb goes into all three, less into fine mesh', () => {
    const { options } = value(whichResin({ ...RESIN, saltLbFt3: 10, figures: { ...RESIN.figures, saltPriceMinorPerLb: 20 } }))
    expect(options[0]?.perYear?.mean).toBeCloseTo(6_000 + 312.85 * 20, -1)
    expect(options[2]?.running?.saltLb).toBeLessThan(options[0]?.running?.saltLb ?? 0)
  })
  it('a price that is missing is named, and never taken as nothing', () => {
    const bare = whichResin({ ...RESIN, rebedMinor: null })
    expect(bare.ok && bare.value).toMatchObject({ cheapest: null, options: [{ perYear: null, chanceCheapest: null }, {}, {}] })
    expect(bare.ok && bare.value.options[0]?.unpriced.join()).toMatch(/Company settings/)
    expect(bare.ok && bare.missing.join()).toMatch(/price of salt/)
    const noFine = value(whichResin({ ...RESIN, kitMoreMinor: { ...RESIN.kitMoreMinor, 'fine-mesh': null } }))
    expect(noFine.options[2]).toMatchObject({ perYear: null, chanceCheapest: null })
    expect(noFine.cheapest).toBe('gel-10')
  })
  it('refuses lives that are none', () => {
    for (const livesYears of [[], [0], [Number.NaN]]) expect(whichResin({ ...RESIN, livesYears })).toMatchObject({ ok: false })
  })
})

const WAY: WayInput = { livesYears: [10], rebedMinor: 60_000, cleanMinor: 20_000, unitMinor: 240_000, unitAgeYears: 0, ironMgL: 0 }

describe('rebed, clean or replace', () => {
  const of = (input: WayInput) => Object.fromEntries(value(rebedCleanReplace(input)).options.map((one) => [one.key, one]))
  it('a rebed lasts as long as bed or unit: 600 over the shorter of 10 and the unit’s years', () => {
    const expected = UNIT_LIVES_YEARS.map((left) => 60_000 / Math.min(10, left))
    expect(of(WAY).rebed?.perYear?.mean).toBeCloseTo(expected.reduce((a, b) => a + b, 0) / expected.length, 6)
  })
  it('a new unit pays for the beds it will need: 2,400 and one more bed over 16 years, two more over 22', () => {
    const expected = UNIT_LIVES_YEARS.map((whole) => (240_000 + 60_000 * (Math.ceil(whole / 10) - 1)) / whole)
    expect(of(WAY).replace?.perYear?.mean).toBeCloseTo(expected.reduce((a, b) => a + b, 0) / expected.length, 6)
  })
  it('a cleaning in vain costs more than none, one that iron calls for may cost less', () => {
    const vain = of(WAY)
    const mean = CLEANED_IN_VAIN_YEARS.reduce((a, b) => a + b, 0) / CLEANED_IN_VAIN_YEARS.length
    expect(mean).toBeLessThan(0.2)
    expect(vain.clean?.perYear?.mean).toBeGreaterThan(vain.rebed?.perYear?.mean ?? 0)
    const fouled = value(rebedCleanReplace({ ...WAY, ironMgL: 1, cleanMinor: 3_000 }))
    expect(fouled).toMatchObject({ ironMayBeTheFault: true, cheapest: 'clean' })
    // Soft beads are not cleaned back, whatever the iron.
    expect(value(rebedCleanReplace({ ...WAY, ironMgL: 1, beads: 'mushy' })).ironMayBeTheFault).toBe(false)
  })
  it('a unit at the end of its years makes replacing cheapest', () => {
    expect(value(rebedCleanReplace({ ...WAY, unitAgeYears: 2 })).cheapest).toBe('rebed')
    expect(value(rebedCleanReplace({ ...WAY, unitAgeYears: 30, unitMinor: 150_000 })).cheapest).toBe('replace')
  })
  it('names what has no price, and judges nothing with it', () => {
    const { options, cheapest } = value(rebedCleanReplace({ ...WAY, unitMinor: null, cleanMinor: null }))
    expect(cheapest).toBeNull()
    expect(options.map((one) => one.unpriced.length)).toEqual([0, 1, 1])
    expect(rebedCleanReplace({ ...WAY, rebedMinor: -1 })).toMatchObject({ ok: false })
  })
})

const KNOWN: OwnerQuestion = {
  ...{ diameterIn: 10, fullTankLb: 205, bagLb: 51, access: 'level', helper: true, hasBypass: true, bypassHolds: true },
  ...{
    valveNeedsPower: true,
    metalPipe: false,
    pressurePsi: 60,
    lawAllows: true,
    stopCase: false,
    waterSource: 'town',
    display: { locale: 'en-US', unitSystem: 'us' },
  },
}

describe('owner or firm (common practice, no source; lifting by NIOSH 94-110)', () => {
  it('a level cellar, two people, a bypass that holds and no licence wanted: an owner can, with a helper', () => {
    const answer = ownerOrFirm(KNOWN, OWNER)
    expect(answer.verdict).toBe('owner-with-helper')
    // 51 lb against a limit of 23.4 lb.
    expect(answer.grounds.find((one) => one.topic === 'lift')?.words).toMatch(/lifting index of 2\.2/)
    expect(answer.never.join()).toMatch(/bleach with iron cleaner/)
  })
  it.each([
    ['law', { lawAllows: false }],
    ['stop', { stopCase: true }],
    ['helper', { helper: false }],
    ['access', { access: 'stairs' }],
    ['bypass', { hasBypass: false }],
    ['bypass', { bypassHolds: false }],
    ['pressure', { pressurePsi: 81 }],
    ['weight', { diameterIn: 21, fullTankLb: 900 }],
  ] as const)('%s alone calls for the firm: %o', (topic, change) => {
    const answer = ownerOrFirm({ ...KNOWN, ...change }, OWNER)
    expect(answer.verdict).toBe('firm')
    expect(answer.grounds.find((one) => one.topic === topic && one.weight === 'firm')).toBeDefined()
  })
  it('80 psi is the limit of plumbing codes, and not above it', () =>
    expect(ownerOrFirm({ ...KNOWN, pressurePsi: 80 }, OWNER).verdict).toBe('owner-with-helper'))
  it('what is not known is asked, never taken as harmless', () => {
    for (const key of ['lawAllows', 'stopCase', 'helper', 'access', 'hasBypass', 'bypassHolds', 'pressurePsi', 'diameterIn'] as const)
      expect([key, ownerOrFirm({ ...KNOWN, [key]: null }, OWNER).verdict]).toEqual([key, 'ask-first'])
    expect(ownerOrFirm({ ...KNOWN, pressurePsi: Number.NaN }, OWNER).verdict).toBe('firm')
  })
})

describe('any input gives a sound answer or a sentence', () => {
  const wild = fc.oneof(
    fc.constant(null),
    fc.double(),
    fc.double({ min: 0, max: 100, noNaN: true }),
    fc.constantFrom(0, -1, 1e12, Number.NaN),
  )
  const years = fc.array(fc.oneof(fc.double({ min: 0.1, max: 60, noNaN: true }), fc.constantFrom(0, Number.NaN)), { maxLength: 8 })
  const sound = (result: { ok: boolean; reason?: string }) => {
    if (result.ok) expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/)
    else expect(result.reason).toMatch(/\.$/)
    const numbers = JSON.stringify(result, (_key, one) => (typeof one === 'number' && !Number.isFinite(one) ? 'NOT-FINITE' : one))
    expect(numbers).not.toContain('NOT-FINITE')
  }
  it('which resin, rebed clean or replace, owner or firm', () => {
    fc.assert(
      fc.property(years, years, wild, wild, wild, wild, (lives, longer, a, b, c, d) => {
        sound(
          whichResin({
            ...RESIN,
            ...{ livesYears: lives, longerTen: longer, rebedMinor: a === null || a >= 0 ? a : 0, hardnessGpg: b, ironMgL: c },
            gallonsPerDay: d ?? 138,
          }),
        )
        sound(rebedCleanReplace({ ...WAY, livesYears: lives, rebedMinor: a, cleanMinor: b, unitMinor: c, unitAgeYears: d }))
        sound({ ok: true, ...ownerOrFirm({ ...KNOWN, diameterIn: a, fullTankLb: b, bagLb: c, pressurePsi: d }, OWNER) })
      }),
      { seed, numRuns: 300 },
    )
  })
  it('a dearer rebed never costs less a year, a longer life never more', () => {
    const sizes = fc.array(fc.double({ min: 1, max: 40, noNaN: true }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(sizes, fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 0, max: 1e6 }), (livesYears, price, more) => {
        const mean = (change: Partial<WhichResinInput>) =>
          value(whichResin({ ...RESIN, livesYears, rebedMinor: price, ...change })).options[0]?.perYear?.mean ?? 0
        expect(mean({ rebedMinor: price + more })).toBeGreaterThanOrEqual(mean({}) - 1e-6)
        expect(mean({ livesYears: livesYears.map((life) => life * 1.1) })).toBeLessThanOrEqual(mean({}) + 1e-6)
      }),
      { seed, numRuns: 200 },
    )
  })
})
