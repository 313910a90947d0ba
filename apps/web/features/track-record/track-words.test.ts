import { describe, expect, test } from 'vitest'
import { type CheckedResult, lean, ranges } from './track-words.ts'

const year = (expected: number, happened: number): CheckedResult['counts'][number] => ({
  ...{ originDay: '2024-01-01', beds: 100, expected, happened, low: 0, high: 100 },
})
const level = new Array<number>(20).fill(5)

describe('early or late', () => {
  test('says the same as the counts of all years', () => {
    expect(lean({ bins: level, counts: [year(129, 100)] })).toMatch(/longer than we said/)
    expect(lean({ bins: level, counts: [year(80, 100)] })).toMatch(/earlier than we said/)
    expect(lean({ bins: level, counts: [year(103, 100)] })).toMatch(/neither too early nor too late/)
  })
})

describe('ranges of past years', () => {
  test('are counted, and widen today’s where they held too seldom', () => {
    const within = [year(50, 60), year(50, 120)]
    expect(ranges(within, 1, { locale: 'en-US' })).toBe('1 of 2 years fell inside their range.')
    expect(ranges(within, 1.25, { locale: 'en-US' })).toMatch(/today’s ranges for a year are 25% wider/)
  })
})
