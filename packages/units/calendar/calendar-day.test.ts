import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { describe, expect, test } from 'vitest'
import { addDays, dayNumber, daysBetween, isIsoDay, isoDayOf, weekdayOf, yearsBetween, yearsSince } from './calendar-day.ts'
import { addMonths, civilDate, daysInMonth, isoDay, monthStart } from './day-number.ts'

// Temporal (the coming standard's calendar, by the library temporal-polyfill) is the outside check.
const plain = (day: string) => Temporal.PlainDate.from(day)
const days = fc.integer({ min: dayNumber('1000-01-01'), max: dayNumber('9999-12-31') }).map(isoDay)
const near = fc.integer({ min: dayNumber('1900-01-01'), max: dayNumber('2100-12-31') }).map(isoDay)
const held = (property: fc.IProperty<[string, number]>) => fc.assert(property, { numRuns: 2000 })

describe('the calendar agrees with Temporal', () => {
  test('on the number, the parts and the weekday of any day', () =>
    fc.assert(
      fc.property(days, (day) => {
        const { year, month, day: date, dayOfWeek, daysInMonth: length } = plain(day)
        expect(plain('1970-01-01').until(day, { largestUnit: 'days' }).days).toBe(dayNumber(day))
        expect(civilDate(dayNumber(day))).toEqual({ year, month, date })
        expect([weekdayOf(day), daysInMonth(year, month), isoDayOf(year, month, date)]).toEqual([dayOfWeek, length, day])
      }),
      { numRuns: 2000 },
    ))
  test('on days added and taken off, over leap days and ends of months', () =>
    held(
      fc.property(near, fc.integer({ min: -40_000, max: 40_000 }), (day, more) => {
        expect(addDays(day, more)).toBe(plain(day).add({ days: more }).toString())
        expect(daysBetween(day, addDays(day, more))).toBe(more)
      }),
    ))
  test('on months added: the 31st becomes the last day of a shorter month', () =>
    held(
      fc.property(near, fc.integer({ min: -600, max: 600 }), (day, months) => {
        expect(isoDay(addMonths(dayNumber(day), months))).toBe(plain(day).add({ months }).toString())
        expect(isoDay(monthStart(dayNumber(day), months))).toBe(plain(day).with({ day: 1 }).add({ months }).toString())
      }),
    ))
  test('on which texts are days', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 9999 }),
        fc.integer({ min: 0, max: 13 }),
        fc.integer({ min: 0, max: 32 }),
        (year, month, date) => {
          const two = (n: number) => String(n).padStart(2, '0')
          const real = () => plain(`${year}-${two(month)}-${two(date)}`)
          const expected = (() => {
            try {
              return real().toString()
            } catch {
              return null
            }
          })()
          expect([isoDayOf(year, month, date), isIsoDay(`${year}-${two(month)}-${two(date)}`)]).toEqual([expected, expected !== null])
        },
      ),
      { numRuns: 2000 },
    ))
})

// Leap years by the rule of 1582: every fourth, no century but each fourth.
test.each([
  [2024, 29],
  [2023, 28],
  [2000, 29],
  [1900, 28],
])('February %i has %i days', (year, length) => expect(daysInMonth(year, 2)).toBe(length))

test.each(['2023-02-29', '2023-13-01', '2023-00-10', '2023-1-1', '', '20230101', '2023-04-31', '0999-01-01'])('%j is no day', (text) => {
  expect(isIsoDay(text)).toBe(false)
  expect(() => dayNumber(text)).toThrow('YYYY-MM-DD')
})

test('parts that the calendar does not have make no day', () =>
  expect([isoDayOf(2023, 4, 31), isoDayOf(2023, 1.5, 1), isoDayOf(99, 1, 1), isoDayOf(2024, 2, 29)]).toEqual([
    ...[null, null, null],
    '2024-02-29',
  ]))

// The Gregorian calendar repeats after 400 years of 146,097 days, so those are 400 mean years.
test('a year has its mean length', () => expect(yearsBetween('1626-12-03', '2026-12-03')).toBe(400))

test('an age counts from the middle of what is known', () => {
  expect(yearsSince('1626-12-03', '2026-12-03', '2026-12-03')).toBe(200)
  expect(yearsSince(null, '1626-12-03', '2026-12-03')).toBe(400)
  expect(yearsSince('1626-12-03', null, '2026-12-03')).toBe(400)
  expect(yearsSince('2027-01-01', null, '2026-12-03')).toBe(0)
  expect(yearsSince(null, null, '2026-12-03')).toBeNull()
})
