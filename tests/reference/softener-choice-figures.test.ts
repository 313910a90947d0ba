import { type OwnerQuestion, ownerOrFirm } from '@almanac/softener/choice/owner-or-firm'
import {
  CLEANED_IN_VAIN_YEARS,
  CLEANED_YEARS,
  rebedCleanReplace,
  UNIT_LIVES_YEARS,
  unitYearsLeft,
  type WayInput,
} from '@almanac/softener/choice/rebed-clean-replace'
import { usableMinor } from '@almanac/softener/choice/spread'
import { whichResin } from '@almanac/softener/choice/which-resin'
import {
  GALLONS_PER_HOUSEHOLD_DAY,
  GALLONS_PER_PERSON_DAY,
  REGENERATION_GAL_FT3,
  USUAL_SALT_LB_FT3,
  yearlyRunning,
} from '@almanac/softener/choice/yearly-running'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { wordsIn } from '@almanac/words/words-in'
import { describe, expect, it } from 'vitest'
import { CARD } from '../support/speaking.ts'

const OWNER = wordsIn('en-US', 'ownerRebed')

const value = <T>(result: { ok: true; value: T } | { ok: false; reason: string }): T => {
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length

// Written twice, so that neither copy changes alone; this shows that a figure is the one that was meant, not that it is true of the world.
const UNITS = [8, 11, 13, 14, 16, 17, 18, 20, 22, 26] // lives of a unit, years: from memory
const WON = [0, 0, 0.5, 1, 1, 1.5, 2, 2, 3, 4] // years a cleaning wins where iron is the fault: from memory

describe('what was chosen, written a second time', () => {
  it('lives of a unit and what a cleaning wins, years (from memory)', () => {
    expect(UNIT_LIVES_YEARS).toEqual(UNITS)
    expect(CLEANED_YEARS).toEqual(WON)
    expect(CLEANED_IN_VAIN_YEARS).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0.5, 1])
  })
  it('salt and water: usual dose (common practice), a regeneration (from memory), a person (common practice), a household (Residential End Uses of Water 2016)', () =>
    expect([USUAL_SALT_LB_FT3, REGENERATION_GAL_FT3, GALLONS_PER_PERSON_DAY, GALLONS_PER_HOUSEHOLD_DAY]).toEqual([8, 65, 60, 138]))
})

describe('rebed, clean or replace', () => {
  const ask = (change: Partial<WayInput>) =>
    value(
      rebedCleanReplace({
        ...{ livesYears: [10], rebedMinor: 1000, cleanMinor: 100, unitMinor: 3000, unitAgeYears: null, ironMgL: 0, ...change },
      }),
    )
  it('iron may be the fault above the secondary standard of 0.3 mg/L (40 CFR 143.3)', () => {
    expect([0.3, 0.31].map((ironMgL) => ask({ ironMgL }).ironMayBeTheFault)).toEqual([false, true])
  })
  it('a unit has what its life leaves, from half a year up, and two years where it is older than all', () => {
    expect(unitYearsLeft(25.48)).toEqual([expect.closeTo(0.52, 10)])
    expect(unitYearsLeft(25.5)).toEqual([2])
    expect(unitYearsLeft(40)).toEqual([2])
  })
  it('twenty lives are thinned to ten, each the middle of two neighbours: the mean cost by hand', () => {
    const lives = Array.from({ length: 20 }, (_, i) => i + 1)
    const pairs = Array.from({ length: 10 }, (_, i) => 2 * i + 1.5)
    const expected = mean(pairs.flatMap((life) => UNITS.map((whole) => 1000 / Math.min(life, whole / 2))))
    const rebed = ask({ livesYears: lives }).options.find((one) => one.key === 'rebed')
    expect(rebed?.perYear?.mean).toBeCloseTo(expected, 6)
  })
})

describe('which resin', () => {
  it('forty-eight lives are thinned to twenty-four', () => {
    const lives = Array.from({ length: 48 }, (_, i) => i + 1)
    const pairs = Array.from({ length: 24 }, (_, i) => 2 * i + 1.5)
    const found = value(
      whichResin({
        ...{ livesYears: lives, longerTen: [1], rebedMinor: 1000, kitMoreMinor: { 'gel-8': 0, 'gel-10': 0, 'fine-mesh': 0 } },
        ...{ hardnessGpg: 18, gallonsPerDay: 138, figures: USUAL_FIGURES, speaking: CARD },
      }),
    )
    expect(found.options.find((one) => one.key === 'gel-8')?.perYear?.mean).toBeCloseTo(mean(pairs.map((life) => 1000 / life)), 6)
  })
})

describe('borders', () => {
  const salt = (saltLbFt3: number | null, gallonsPerDay = 138) =>
    yearlyRunning('gel-8', { hardnessGpg: 18, gallonsPerDay, saltLbFt3, figures: USUAL_FIGURES, speaking: CARD })
  it('a dose above 40 lb/ft³ is a slip: the usual one is taken', () => {
    expect(value(salt(41))).toEqual(value(salt(null)))
    expect(value(salt(40)).saltLb).not.toBeCloseTo(value(salt(null)).saltLb, 0)
  })
  it('a million gallons a day, and a million millions of cents, are slips', () => {
    expect([999_999, 1_000_000].map((gallons) => salt(8, gallons).ok)).toEqual([true, false])
    expect([1e12 - 1, 1e12].map(usableMinor)).toEqual([true, false])
  })
  it('a bag lifted 6 in from the floor, 14 in out, carried 36 in up, poor hold: NIOSH 94-110 gives 51 × 10/14 × 0.82 × 0.87 × 0.9 = 23.39 lb', () => {
    const question: OwnerQuestion = {
      ...{ diameterIn: 10, fullTankLb: 200, bagLb: null, access: null, helper: true, hasBypass: true, bypassHolds: true },
      ...{
        valveNeedsPower: false,
        metalPipe: false,
        pressurePsi: 50,
        lawAllows: true,
        stopCase: false,
        waterSource: 'town',
        display: { locale: 'en-US', unitSystem: 'us' },
      },
    }
    const lift = (bagLb: number) => ownerOrFirm({ ...question, bagLb }, OWNER).grounds.find((one) => one.topic === 'lift')?.words
    // 52.60 ÷ 23.389 = 2.2489 and 52.65 ÷ 23.389 = 2.2510.
    expect(lift(52.6)).toContain('lifting index of 2.2 ')
    expect(lift(52.65)).toContain('lifting index of 2.3 ')
  })
})
