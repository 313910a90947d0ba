import { describe, expect, test } from 'vitest'
import { daysOfRule, type Every, everyOf, ruleOf } from './turn-rule.ts'

const days = (every: Every, first: string, from: string, until: string) => daysOfRule(ruleOf(every, first), first, from, until)

describe('turns, counted by hand on a calendar', () => {
  test.each<[string, Every, string, [string, string], string[]]>([
    ['every year', { count: 1, unit: 'year' }, '2020-06-03', ['2026-01-01', '2028-12-31'], ['2026-06-03', '2027-06-03', '2028-06-03']],
    ['every six weeks', { count: 6, unit: 'week' }, '2026-11-02', ['2026-11-01', '2027-02-01'], ['2026-11-02', '2026-12-14', '2027-01-25']],
    // A month without a 31st has its turn on its last day: nobody is left out in February.
    [
      'every month from the 31st',
      { count: 1, unit: 'month' },
      '2026-12-31',
      ['2026-12-01', '2027-04-30'],
      ['2026-12-31', '2027-01-31', '2027-02-28', '2027-03-31', '2027-04-30'],
    ],
    [
      'every six months from the 30th',
      { count: 6, unit: 'month' },
      '2026-08-30',
      ['2027-01-01', '2028-03-01'],
      ['2027-02-28', '2027-08-30', '2028-02-29'],
    ],
    [
      'every year from a leap day',
      { count: 1, unit: 'year' },
      '2024-02-29',
      ['2025-01-01', '2028-12-31'],
      ['2025-02-28', '2026-02-28', '2027-02-28', '2028-02-29'],
    ],
    [
      'every other year from a leap day',
      { count: 2, unit: 'year' },
      '2024-02-29',
      ['2025-01-01', '2030-12-31'],
      ['2026-02-28', '2028-02-29', '2030-02-28'],
    ],
    ['none before it begins', { count: 1, unit: 'year' }, '2027-06-03', ['2026-01-01', '2027-06-02'], []],
  ])('%s', (_name, every, first, [from, until], expected) => {
    expect(days(every, first, from, until)).toEqual(expected)
  })

  test('a rule says how often, as it was asked for', () => {
    for (const every of [
      { count: 1, unit: 'year' },
      { count: 6, unit: 'week' },
      { count: 3, unit: 'month' },
    ] as const)
      for (const first of ['2024-02-29', '2026-12-31', '2026-05-04']) expect(everyOf(ruleOf(every, first))).toEqual(every)
  })
})
