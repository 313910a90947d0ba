import { describe, expect, it } from 'vitest'
import { addMonths, isoDay, monthStart, parseDay } from './day-number.ts'

describe('day numbers', () => {
  it('count from 1970 and agree with known days', () => {
    expect(parseDay('1970-01-01')).toBe(0)
    // The first day of the Unix billennium was 2001-09-09: 1e9 s = 11,574 days and some hours.
    expect(parseDay('2001-09-09')).toBe(Math.floor(1e9 / 86400))
    expect(isoDay(11574)).toBe('2001-09-09')
  })

  it('read back what they wrote over four centuries', () => {
    for (let day = -80_000; day < 80_000; day += 13) expect(parseDay(isoDay(day))).toBe(day)
  })

  it('refuse days that do not exist', () => {
    for (const text of ['2023-02-29', '2023-13-01', '2023-00-10', '2023-04-31', '1900-02-29', '23-1-1', '2023/01/01', 'yesterday', '']) {
      expect(parseDay(text), text).toBeNull()
    }
    expect(parseDay('2024-02-29')).not.toBeNull()
    expect(parseDay('2000-02-29')).not.toBeNull()
  })

  it('add months and keep to the end of short ones', () => {
    expect(isoDay(addMonths(parseDay('2024-01-31') ?? 0, 1))).toBe('2024-02-29')
    expect(isoDay(addMonths(parseDay('2024-11-15') ?? 0, 3))).toBe('2025-02-15')
    expect(isoDay(monthStart(parseDay('2024-12-31') ?? 0, 1))).toBe('2025-01-01')
  })
})
