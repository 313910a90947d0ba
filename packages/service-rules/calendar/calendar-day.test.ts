import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addDays, dayNumber, daysInMonth, fromDayNumber, isIsoDay, isoDay } from './calendar-day.ts'

// The platform's own proleptic Gregorian calendar is the outside check; the package itself may not use it.
const platformDay = (number: number) => new Date(number * 86_400_000).toISOString().slice(0, 10)

test('agrees with the platform calendar for every day from 1900 to 2100', () => {
  for (let number = -25_567; number < 47_500; number++) {
    const day = platformDay(number)
    if (dayNumber(day) !== number || fromDayNumber(number) !== day) throw new Error(`${day} is ${number}`)
  }
})

test.each([
  [2024, 29],
  [2023, 28],
  [2000, 29],
  [1900, 28],
])('February %i has %i days', (year, days) => expect(daysInMonth(year, 2)).toBe(days))

test.each(['2023-02-29', '2023-13-01', '2023-00-10', '2023-1-1', '', '20230101', '2023-04-31'])('%j is no day', (text) =>
  expect(isIsoDay(text)).toBe(false),
)

test('refuses what the calendar does not have', () => {
  expect(isoDay(2023, 4, 31)).toBeNull()
  expect(isoDay(2023, 1.5, 1)).toBeNull()
  expect(isoDay(99, 1, 1)).toBeNull()
  expect(isoDay(2024, 2, 29)).toBe('2024-02-29')
})

test('adding and taking off days comes back', () => {
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 40_000 }), fc.integer({ min: -5_000, max: 5_000 }), (number, days) => {
      const day = fromDayNumber(number)
      return addDays(addDays(day, days), -days) === day
    }),
  )
})
