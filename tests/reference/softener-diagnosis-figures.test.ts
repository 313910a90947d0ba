import { CURE_HOURS } from '@almanac/softener/diagnosis/actions'
import { adviceFor } from '@almanac/softener/diagnosis/advice'
import type { Chances } from '@almanac/softener/diagnosis/cause-posterior'
import { causePrior } from '@almanac/softener/diagnosis/cause-prior'
import { CAUSES } from '@almanac/softener/diagnosis/causes'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { readEvidence, saidWeights } from '@almanac/softener/diagnosis/evidence'
import { factorWords } from '@almanac/softener/diagnosis/explain-cause'
import { gradeCapacity, gradeOutlet, gradeSalt } from '@almanac/softener/diagnosis/graded'
import { answersFrom, CAUSE_ORDER } from '@almanac/softener/diagnosis/likelihood-rows'
import { checkWorths } from '@almanac/softener/diagnosis/next-check'
import { WORTH_ASKING_HOURS } from '@almanac/softener/diagnosis/triage'
import { describe, expect, it } from 'vitest'
import { checkOf } from '../support/check-of.ts'
import { DIAGNOSIS } from '../support/speaking.ts'

const only = (shares: Partial<Chances>): Chances => Object.fromEntries(CAUSE_ORDER.map((cause) => [cause, shares[cause] ?? 0])) as Chances

// The record of what was chosen, from memory and common practice, no source: written twice, so that neither copy changes alone. It shows that
// a figure is the one that was meant, not that the figure is true of the world; a firm's own records will have to say that.
describe('what was chosen, written a second time', () => {
  it.each([
    ['beads', 2, 97],
    ['tap-water', 2, 85],
    ['bypass', 3, 96],
    ['salt', 2, 88],
    ['brine', 3, 88],
    ['clock', 4, 90],
    ['change', 2, 85],
    ['pressure', 5, 88],
    ['iron', 3, 90],
    ['outlet', 10, 98],
    ['draws-brine', 20, 96],
    ['capacity', 60, 93],
    ['settings', 4, 97],
    ['signs', 2, 95],
    ['bead-feel', 45, 95],
  ] as const)('%s takes %d minutes, and %d answers of 100 are right', (id, minutes, right) => {
    const check = checkOf(id)
    expect(check.minutes).toBe(minutes)
    const weights = saidWeights(check, 0)
    expect(weights[0]).toBeCloseTo(right / 100, 10)
    expect(weights.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 10)
  })
  it('no check is left out above', () => expect(CHECKS).toHaveLength(15))
  it('hours of each cure, and from when on a check is asked for', () => {
    expect(CURE_HOURS).toEqual({
      ...{ 'worn-bed': 9, 'broken-distributor': 9, channelling: 3, 'iron-fouling': 3, 'injector-brine': 2, 'meter-timer': 2 },
      ...{ bypass: 0.75, undersized: 12, 'water-changed': 1.5, 'no-fault': 0, 'mis-set': 0.75, 'valve-seals': 2.5 },
    })
    expect(WORTH_ASKING_HOURS).toBe(0.05)
  })
  it('shares of complaints, in hundredths', () => {
    const hundredths = CAUSES.map((one) => [one.id, Math.round(one.share * 100)])
    expect(hundredths).toEqual([
      ...[
        ['worn-bed', 16],
        ['broken-distributor', 4],
        ['channelling', 4],
        ['iron-fouling', 8],
        ['injector-brine', 20],
      ],
      ...[
        ['meter-timer', 13],
        ['bypass', 9],
        ['undersized', 6],
        ['water-changed', 5],
        ['no-fault', 7],
        ['mis-set', 4],
        ['valve-seals', 4],
      ],
    ])
  })
  it('nothing is quite impossible: 0 of 100 counts as a half, beside 100', () => {
    expect(checkOf('beads').answers[0]?.chances['no-fault']).toBeCloseTo(0.5 / 100.5, 10)
    expect(checkOf('beads').answers[1]?.chances['no-fault']).toBeCloseTo(100 / 100.5, 10)
  })
  it('a table whose column is not a hundred is refused', () => {
    const row = (share: number) => CAUSE_ORDER.map(() => share)
    expect(() =>
      answersFrom([
        ['a', row(60)],
        ['b', row(41)],
      ]),
    ).toThrow(/add up to 101, not to 100, in worn-bed/)
    expect(
      answersFrom([
        ['a', row(60)],
        ['b', row(40)],
      ])[0]?.chances.bypass,
    ).toBeCloseTo(0.6, 10)
  })
})

// One standard error on the side of the answer: the normal distribution function at 1 (Abramowitz and Stegun, table 26.1).
const ONE = 0.841344746

describe('a measurement one standard error beyond the border', () => {
  it('capacity: 8 hundredths beside 75 and 90%', () => {
    expect(gradeCapacity(0.67, DIAGNOSIS).weights[2]).toBeCloseTo(ONE, 6)
    expect(gradeCapacity(0.98, DIAGNOSIS).weights[0]).toBeCloseTo(ONE, 6)
  })
  it('drop kit: 0.7 gpg below 2', () => {
    expect(gradeOutlet(1.3, null, DIAGNOSIS).weights).toEqual([ONE, ONE, 1 - ONE].map((one) => expect.closeTo(one, 6)))
    // Soft at the tap with the outlet unread: hard at both is believed half as much as the tap is soft.
    expect(gradeOutlet(null, 1.3, DIAGNOSIS).weights).toEqual([ONE, 1 - ONE, 1 - ONE / 2].map((one) => expect.closeTo(one, 6)))
  })
  it('salt: 12 hundredths beside 15, 75 and 130%', () => {
    expect(gradeSalt(0.03, DIAGNOSIS).weights[0]).toBeCloseTo(ONE, 6)
    expect((gradeSalt(0.63, DIAGNOSIS).weights[0] ?? 0) + (gradeSalt(0.63, DIAGNOSIS).weights[1] ?? 0)).toBeCloseTo(ONE, 6)
    expect(gradeSalt(1.42, DIAGNOSIS).weights[3]).toBeCloseTo(ONE, 6)
  })
})

describe('borders', () => {
  it('a bed as old as the scale of its Weibull life, 13 years, has failed with 1 − 1/e; at half of it with 1 − e^(−1/8), for shape 3', () => {
    expect(causePrior({ ageYears: 13 }, DIAGNOSIS).chances['worn-bed']).toBeCloseTo(1 - Math.exp(-1), 10)
    expect(causePrior({ ageYears: 6.5 }, DIAGNOSIS).chances['worn-bed']).toBeCloseTo(1 - Math.exp(-1 / 8), 10)
    expect(causePrior({ ageYears: 100 }, DIAGNOSIS).basis).toBe('age')
    expect(causePrior({ ageYears: 101 }, DIAGNOSIS).basis).toBe('usual')
  })
  it.each([
    ['capacityShare', 1.5, 1.55],
    ['outletGpg', 250, 251],
    ['tapGpg', 250, 251],
    ['saltShareOfSetting', 10, 10.1],
  ] as const)('%s is taken up to %d', (key, most, more) => {
    expect(readEvidence({ answers: {}, measured: { [key]: most } }, DIAGNOSIS).problems).toEqual([])
    expect(readEvidence({ answers: {}, measured: { [key]: more } }, DIAGNOSIS).problems).toHaveLength(1)
  })
  it('a second cause with the same cure is named from two fifths of the first up', () => {
    const said = (second: number) =>
      adviceFor(only({ channelling: 1 - second, 'iron-fouling': second }), false, false, DIAGNOSIS.words).sentences
    // 0.41 × 0.71 = 0.291 and 0.39 × 0.72 = 0.281 of what is left: second ÷ first is 0.408 and 0.389.
    expect(said(0.29)).toHaveLength(2)
    expect(said(0.28)).toHaveLength(1)
  })
  it.each([
    ['tap-water', 2 / 60],
    ['outlet', 10 / 60],
    ['bead-feel', (2 * 45) / 60],
    // Two readings of the meter, days apart: the second way there counts as a call-back does.
    ['capacity', 60 / 60 + 3],
  ] as const)('%s costs its minutes, and with the valve off two people’s', (id, costHours) => {
    const one = checkWorths(only({ 'worn-bed': 0.5, 'iron-fouling': 0.5 }), new Set()).find(({ check }) => check.id === id)
    if (!one) throw new Error('no check')
    expect(one.savesHours + 0.5 * one.bits - one.worthHours).toBeCloseTo(costHours, 10)
  })
  it('what was read, in words', () => {
    expect(causePrior({ chanceFailed: 0.6 }, DIAGNOSIS).assumption).toContain('gives 60% that')
    expect(gradeCapacity(0.67, DIAGNOSIS).words).toBe('67% measured')
    expect(gradeSalt(0.63, DIAGNOSIS).words).toBe('63% of the setting')
    expect(gradeOutlet(1.26, 15, DIAGNOSIS).words).toBe('outlet 1.3 gpg, tap 15 gpg')
  })
  it('a factor in words', () => {
    expect([0.9, 0.91, 1.1, 1.11].map((factor) => factorWords(factor, DIAGNOSIS.words))).toEqual([
      ...['points away from it, × 0.9', 'says little either way', 'says little either way', 'points to it, × 1.1'],
    ])
    expect([9.96, 10.4, 0.096, 0.094, 0.005, 0.0049].map((factor) => factorWords(factor, DIAGNOSIS.words))).toEqual([
      ...['points to it, × 10.0', 'points to it, × 10', 'points away from it, × 0.1', 'points away from it, × 0.09'],
      ...['points away from it, × 0.01', 'points away from it, × less than 0.01'],
    ])
  })
})
