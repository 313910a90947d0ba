import { describe, expect, it } from 'vitest'
import { outsideSiteHours, siteHoursOn, siteHoursWords, takesAnyTime } from './site-hours.ts'

const US = { locale: 'en-US' }
const ANY = { weekdays: [], from: null, until: null }
const KITCHEN = { weekdays: [1, 2], from: '14:30', until: '18:00' }
/** 30 November 2026 is a Monday (by the calendar). */
const [MONDAY, WEDNESDAY] = ['2026-11-30', '2026-12-02']

describe('when a site takes visits', () => {
  it('nothing written down: at any time', () => {
    expect(takesAnyTime(ANY)).toBe(true)
    expect(siteHoursWords(ANY, US)).toBeNull()
    expect(siteHoursOn(ANY, MONDAY)).toEqual({ from: 0, until: 1440 })
    expect(outsideSiteHours(ANY, MONDAY, 0, 1440, US)).toBeNull()
  })
  it('a kitchen between meals on its weekdays: begin and end lie within', () => {
    expect(siteHoursOn(KITCHEN, MONDAY)).toEqual({ from: 870, until: 1080 })
    expect(siteHoursOn(KITCHEN, WEDNESDAY)).toBeNull()
    expect(outsideSiteHours(KITCHEN, MONDAY, 870, 1080, US)).toBeNull()
    for (const [start, end] of [
      [869, 1000],
      [900, 1081],
    ] as const)
      expect(outsideSiteHours(KITCHEN, MONDAY, start, end, US)).toBe('Visiting hours are Mon, Tue, 2:30 – 6:00\u00a0PM.')
    expect(outsideSiteHours(KITCHEN, WEDNESDAY, 900, 1000, US)).not.toBeNull()
  })
  it('one bound alone', () => {
    expect(siteHoursWords({ weekdays: [], from: '16:00', until: null }, US)).toBe('from 4:00\u00a0PM')
    expect(siteHoursOn({ weekdays: [], from: null, until: '07:00' }, MONDAY)).toEqual({ from: 0, until: 420 })
  })
})
