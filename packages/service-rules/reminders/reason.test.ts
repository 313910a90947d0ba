import { describe, expect, test } from 'vitest'
import { lifeOf, reasonOf } from './reason.ts'

const driver = (key: string, yearsTaken: number, fromDay: string) => ({ key, yearsTaken, fromDay })

describe('the reason a customer is told', () => {
  test.each([
    [[driver('chloramine', 3.1, '2021-05-01')], { key: 'chloramine', sinceYear: 2021 }],
    [[driver('chloramine', 3.1, '2014-03-01')], { key: 'chloramine', sinceYear: null }],
    [[driver('iron', 0.8, '2014-03-01'), driver('free-chlorine', 2, '2014-03-01')], { key: 'free-chlorine', sinceYear: null }],
    [[driver('throughput', 4, '2014-03-01'), driver('iron', 0.9, '2014-03-01')], { key: 'iron', sinceYear: null }],
    [[driver('chloramine', 0.4, '2021-05-01')], null],
    [[driver('carbon', -3, '2021-05-01')], null],
    [[], null],
  ])('of %j is %j', (drivers, reason) => expect(reasonOf(drivers, '2014-03-01')).toEqual(reason))
})

// 2015-06-01 to 2026-11-30 is eleven and a half years.
test.each([
  ['2015-12-01', '2027-12-01', { lived: 11, likely: 12 }],
  ['2015-12-01', '2022-01-01', { lived: 11, likely: null }],
  [null, '2027-12-01', null],
  ['2015-12-01', null, null],
])('a bed of %s, half due by %s: %j', (began, due, life) => expect(lifeOf(began, due, '2026-11-30')).toEqual(life))
