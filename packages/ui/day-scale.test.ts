import { dayNumber } from '@almanac/units/calendar/calendar-day'
import { describe, expect, it } from 'vitest'
import { dayShare, yearTicks } from './day-scale.ts'

describe('days on an axis', () => {
  it('counts days over leap years', () => {
    // 2024 is a leap year: 28 February to 1 March are two days.
    expect(dayNumber('2024-03-01') - dayNumber('2024-02-28')).toBe(2)
    expect(dayNumber('1970-01-02')).toBe(1)
  })

  it('stands a day at its share of the axis', () => {
    // 365 of 1461 days (2024 leap, 2025, 2026, 2027).
    expect(dayShare('2024-12-31', '2024-01-01', '2028-01-01').share).toBeCloseTo(365 / 1461, 12)
  })

  it('holds days outside at the edge and says so', () => {
    expect(dayShare('2020-01-01', '2024-01-01', '2028-01-01')).toEqual({ share: 0, outside: 'before' })
    expect(dayShare('2040-01-01', '2024-01-01', '2028-01-01')).toEqual({ share: 1, outside: 'after' })
  })

  it('refuses an axis that runs backwards and a day that is none', () => {
    expect(() => dayShare('2024-01-01', '2024-01-01', '2024-01-01')).toThrow('must end after it begins')
    expect(() => dayNumber('3.12.2026')).toThrow('YYYY-MM-DD')
  })

  it('thins years until they fit', () => {
    expect(yearTicks('2024-06-01', '2030-06-01', 6).map((t) => t.year)).toEqual([2025, 2026, 2027, 2028, 2029, 2030])
    expect(yearTicks('2024-06-01', '2030-06-01', 3).map((t) => t.year)).toEqual([2026, 2028, 2030])
  })
})
