import { CURE_HOURS, leastHours, weighCures } from '@almanac/softener/diagnosis/actions'
import { afterFinding, type Chances } from '@almanac/softener/diagnosis/cause-posterior'
import { CAUSES, type CauseId } from '@almanac/softener/diagnosis/causes'
import { CHECKS } from '@almanac/softener/diagnosis/checks'
import { saidWeights } from '@almanac/softener/diagnosis/evidence'
import { gradeCapacity, gradeOutlet, gradeSalt, normalCumulative } from '@almanac/softener/diagnosis/graded'
import { CAUSE_ORDER } from '@almanac/softener/diagnosis/likelihood-rows'
import { checkWorths, HOURS_PER_BIT } from '@almanac/softener/diagnosis/next-check'
import { describe, expect, it } from 'vitest'
import { checkOf } from '../support/check-of.ts'
import { DIAGNOSIS } from '../support/speaking.ts'

describe('tables', () => {
  it('shares of complaints add up to 1, and each cause has its column', () => {
    expect(CAUSES.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 10)
    expect([...CAUSE_ORDER].sort()).toEqual(CAUSES.map((one) => one.id).sort())
  })
  it.each(CHECKS.map((check) => [check.id, check] as const))(
    '%s: chances of the answers add up to 1 in each cause, none is 0',
    (_, check) => {
      for (const cause of CAUSE_ORDER) {
        const chances = check.answers.map((answer) => answer.chances[cause])
        expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 10)
        expect(Math.min(...chances)).toBeGreaterThan(0.004)
      }
    },
  )
  // Our own figures, from memory, pinned so that a slip of the finger is seen: chance of the first answer in each cause, by hundredths.
  it.each([
    ['beads', [8, 85, 1, 1, 1, 1, 1, 1, 1, 0.5, 1, 1]],
    ['tap-water', [10, 30, 8, 12, 5, 8, 8, 12, 20, 75, 12, 15]],
    ['bypass', [98, 98, 98, 98, 98, 98, 42, 98, 98, 98, 98, 98]],
    ['salt', [2, 2, 2, 2, 55, 52, 3, 1, 2, 3, 3, 8]],
    ['brine', [92, 92, 92, 90, 28, 70, 92, 92, 92, 95, 92, 55]],
    ['clock', [94, 94, 94, 94, 91, 22, 94, 93, 94, 95, 88, 92]],
    ['pressure', [52, 60, 60, 58, 92, 93, 93, 76, 88, 84, 90, 90]],
    ['iron', [86, 90, 80, 12, 86, 82, 78, 86, 72, 93, 84, 86]],
    ['outlet', [10, 30, 8, 10, 5, 8, 2, 30, 22, 90, 30, 20]],
    ['settings', [92, 92, 92, 92, 92, 82, 92, 82, 62, 95, 4, 92]],
    ['signs', [90, 88, 90, 88, 40, 62, 88, 92, 92, 94, 92, 12]],
    ['draws-brine', [97, 94, 95, 93, 14, 92, 97, 97, 97, 98, 97, 78]],
    ['capacity', [3, 20, 5, 6, 8, 70, 45, 72, 22, 92, 88, 45]],
    ['bead-feel', [8, 70, 72, 24, 88, 88, 88, 86, 78, 93, 88, 88]],
  ] as const)('%s', (id, hundredths) => {
    const first = checkOf(id).answers[0]
    for (const [at, cause] of CAUSE_ORDER.entries())
      expect(Math.abs(100 * (first?.chances[cause] ?? 0) - (hundredths[at] ?? 0)), cause).toBeLessThan(2)
  })
})

describe('graded measurements', () => {
  it('the normal distribution function (Abramowitz and Stegun, table 26.1)', () => {
    expect(normalCumulative(0)).toBeCloseTo(0.5, 7)
    expect(normalCumulative(1)).toBeCloseTo(0.841344746, 6)
    expect(normalCumulative(-1.96)).toBeCloseTo(0.024997895, 6)
    expect(normalCumulative(3)).toBeCloseTo(0.998650102, 6)
  })
  it('a quarter of the capacity gone is the border (UFC 3-240-13FN §2-2.5.1.4): a measured 75% is as often above as below', () => {
    const [, , low] = gradeCapacity(0.75, DIAGNOSIS).weights
    expect(low).toBeCloseTo(0.5, 6)
    expect(gradeCapacity(0.5, DIAGNOSIS).weights[2]).toBeGreaterThan(0.99)
    expect(gradeCapacity(1, DIAGNOSIS).weights[0]).toBeGreaterThan(0.85)
  })
  it('a drop kit reads 1 gpg a drop, give or take a drop: 2 gpg may be soft or hard (common practice)', () => {
    expect(gradeOutlet(2, null, DIAGNOSIS).weights).toEqual([expect.closeTo(0.5, 6), expect.closeTo(0.5, 6), expect.closeTo(0.5, 6)])
    const [bothSoft = 0, tapHard = 0, hard = 0] = gradeOutlet(0, 15, DIAGNOSIS).weights
    expect(tapHard).toBeGreaterThan(0.99)
    expect(Math.max(bothSoft, hard)).toBeLessThan(0.01)
    expect(gradeOutlet(10, 10, DIAGNOSIS).weights[2]).toBeGreaterThan(0.99)
  })
  it('salt against the setting', () => {
    expect(gradeSalt(0, DIAGNOSIS).weights[0]).toBeGreaterThan(0.85)
    expect(gradeSalt(0.5, DIAGNOSIS).weights[1]).toBeGreaterThan(0.95)
    expect(gradeSalt(1, DIAGNOSIS).weights[2]).toBeGreaterThan(0.95)
    expect(gradeSalt(2, DIAGNOSIS).weights[3]).toBeGreaterThan(0.99)
  })
})

const only = (shares: Partial<Chances>): Chances => Object.fromEntries(CAUSE_ORDER.map((cause) => [cause, shares[cause] ?? 0])) as Chances

describe('Bayes by hand', () => {
  it('two causes, one answer', () => {
    // Salt not going down: 0.55 of injector faults, 0.02 of worn beds; heard rightly 88 times of 100, else one of three others.
    const check = checkOf('salt')
    const heard = (share: number) => 0.88 * share + 0.04 * (1 - share)
    const [worn, injector] = [0.5 * heard(0.02), 0.5 * heard(0.55)]
    const { after } = afterFinding(only({ 'worn-bed': 0.5, 'injector-brine': 0.5 }), check, saidWeights(check, 0))
    expect(after['injector-brine']).toBeCloseTo(injector / (worn + injector), 6)
  })
})

describe('what to do, by hours (relative, common practice)', () => {
  it('the cure of a certain cause costs its own hours and no more', () => {
    for (const cause of CAUSES) {
      const [best] = weighCures(only({ [cause.id]: 1 }))
      expect(best?.cause.cure).toBe(cause.cure)
      expect(best?.expectedHours).toBeCloseTo(CURE_HOURS[cause.id], 10)
    }
  })
  it('a rebed is not made on a coin’s toss against a repair: 0.5 × (9) + 0.5 × (9 + 3 + 2) is more than 2 + 0.5 × (3 + 9)', () => {
    const even = weighCures(only({ 'worn-bed': 0.5, 'injector-brine': 0.5 }))
    const hours = (id: CauseId) => even.find((one) => one.cause.id === id)?.expectedHours
    expect(hours('worn-bed')).toBeCloseTo(11.5, 10)
    expect(hours('injector-brine')).toBeCloseTo(8, 10)
    expect(even[0]?.cause.id).toBe('injector-brine')
  })
  it('it is made where 14 − 5p is less than the cheapest repair tried first, 3.5 + 9.25p: from 0.737 up', () => {
    const best = (p: number) => weighCures(only({ 'worn-bed': p, 'injector-brine': 1 - p }))[0]?.cause.cure
    expect(best(0.73)).toBe('repair')
    expect(best(0.745)).toBe('rebed')
  })
  it('one repair taken for another costs ¾ of an hour more; telling somebody that all is well costs 4', () => {
    const hours = (taken: CauseId, truth: CauseId) => weighCures(only({ [truth]: 1 })).find((one) => one.cause.id === taken)?.expectedHours
    expect(hours('meter-timer', 'injector-brine')).toBeCloseTo(2 + 0.75 + 2, 10)
    expect(hours('no-fault', 'bypass')).toBeCloseTo(3 + 4 + 0.75, 10)
    expect(hours('worn-bed', 'iron-fouling')).toBe(9)
  })
})

describe('the check worth most', () => {
  it('between meter and injector it is the one that tells them apart', () => {
    const chances = only({ 'meter-timer': 0.5, 'injector-brine': 0.5 })
    const asked = checkWorths(chances, new Set(['beads']))
    expect(['clock', 'draws-brine']).toContain(asked[0]?.check.id)
    expect(asked.at(-1)?.worthHours).toBeLessThan(0)
    for (const one of asked) {
      expect(one.savesHours).toBeLessThanOrEqual(leastHours(chances) + 1e-9)
      expect(one.bits).toBeLessThanOrEqual(1 + 1e-9)
    }
  })
  it('counts a bit of doubt for half an hour and takes the check’s own time off', () => {
    const [first] = checkWorths(only({ 'meter-timer': 0.5, 'injector-brine': 0.5 }), new Set(['beads']))
    if (!first) throw new Error('no check')
    const people = first.check.place === 'opened' ? 2 : 1
    expect(HOURS_PER_BIT).toBe(0.5)
    expect(first.worthHours).toBeCloseTo(first.savesHours + 0.5 * first.bits - (people * first.check.minutes) / 60, 10)
  })
  it('nothing is worth a check where the cause is certain', () => {
    for (const one of checkWorths(only({ bypass: 1 }), new Set())) expect(one.worthHours).toBeLessThan(0)
  })
})
