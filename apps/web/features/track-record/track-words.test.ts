import { describe, expect, test } from 'vitest'
import { type CheckedResult, lean } from './track-words.ts'

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
