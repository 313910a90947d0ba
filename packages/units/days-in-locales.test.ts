import { describe, expect, it, test } from 'vitest'
import {
  formatClock,
  formatClocks,
  formatClockTime,
  formatClockTimes,
  formatDuration,
  formatInstant,
  formatMinute,
} from './format-clock.ts'
import {
  formatDay,
  formatDays,
  formatDayTitle,
  formatLongMonth,
  formatMonth,
  formatMonths,
  formatNearDay,
  formatWeekday,
  monthLabel,
} from './format-day.ts'

// Written by hand from CLDR 48's Gregorian patterns (main/<locale>/ca-gregorian): availableFormats yMMMd, MMMEd, MMMMEEEEd, yMMM, yMMMM, intervalFormats
// yMMMd and yMMM, timeFormats short; the months' and weekdays' names of the same files. English of the United States is "MMM d, y" and "h:mm a", of Britain
// "d MMM y" and "HH:mm", German "d. MMM y", Spanish of the United States "d MMM y" with names in small letters.
const shown = (locale: string) => {
  const display = { locale, timeZone: 'America/Phoenix' }
  // 15:10 and 17:30 UTC are 8:10 and 10:30 in Phoenix, UTC-7 all year.
  const [at, until] = ['2026-12-03T15:10:00Z', '2026-12-03T17:30:00Z']
  return [
    formatDay('2026-12-03', display),
    formatNearDay('2026-12-03', display),
    formatDayTitle('2026-12-03', '2026-11-29', display),
    formatDayTitle('2027-01-07', '2026-11-29', display),
    formatDays('2026-12-28', '2027-01-03', display),
    formatDays('2026-12-03', '2026-12-03', display),
    formatMonth('2026-12', display),
    formatLongMonth('2026-12-03', display),
    formatMonths('2026-03-01', '2026-06-30', display),
    formatClock(at, display),
    formatClocks(at, until, display),
    formatClockTime('14:30', display),
    formatInstant(at, display),
    formatWeekday(1, display, true),
    formatWeekday(7, display),
    monthLabel('2026-03-01', false, display),
    monthLabel('2026-03-01', true, display),
    formatDuration(95, display),
  ]
}

describe('days, clocks and durations in four locales', () => {
  it('American', () =>
    expect(shown('en-US')).toEqual([
      ...['Dec 3, 2026', 'Thu, Dec 3', 'Thursday, December 3', 'Thursday, January 7, 2027'],
      ...['Dec 28, 2026 – Jan 3, 2027', 'Dec 3, 2026', 'Dec 2026', 'December 2026', 'Mar – Jun 2026'],
      ...['8:10\u00a0AM', '8:10 – 10:30\u00a0AM', '2:30\u00a0PM', 'Dec 3, 2026, 8:10\u00a0AM', 'Mon', 'Sunday', 'Mar', 'M', '1 h 35 min'],
    ]))
  it('British', () =>
    expect(shown('en-GB')).toEqual([
      ...['3 Dec 2026', 'Thu 3 Dec', 'Thursday 3 December', 'Thursday, 7 January 2027'],
      ...['28 Dec 2026 – 3 Jan 2027', '3 Dec 2026', 'Dec 2026', 'December 2026', 'Mar – Jun 2026'],
      ...['08:10', '08:10–10:30', '14:30', '3 Dec 2026, 08:10', 'Mon', 'Sunday', 'Mar', 'M', '1 h 35 min'],
    ]))
  it('German', () =>
    expect(shown('de-DE')).toEqual([
      ...['3. Dez. 2026', 'Do., 3. Dez.', 'Donnerstag, 3. Dezember', 'Donnerstag, 7. Januar 2027'],
      ...['28. Dez. 2026 – 3. Jan. 2027', '3. Dez. 2026', 'Dez. 2026', 'Dezember 2026', 'März–Juni 2026'],
      ...['08:10', '08:10–10:30\u00a0Uhr', '14:30', '03.12.2026, 08:10', 'Mo', 'Sonntag', 'Mär', 'M', '1 h 35 min'],
    ]))
  it('Spanish of the United States', () =>
    expect(shown('es-US')).toEqual([
      ...['3 dic 2026', 'jue, 3 de dic', 'jueves, 3 de diciembre', 'jueves, 7 de enero de 2027'],
      ...['28 de dic de 2026 – 3 de ene de 2027', '3 dic 2026', 'dic 2026', 'diciembre de 2026', 'mar–jun de 2026'],
      ...[
        '8:10\u00a0a.m.',
        '8:10–10:30\u00a0a.m.',
        '2:30\u00a0p.m.',
        '3 dic 2026, 8:10\u00a0a.m.',
        'lun',
        'domingo',
        'mar',
        'M',
        '1 h 35 min',
      ],
    ]))
})

const US = { locale: 'en-US', timeZone: 'America/Chicago' }

test.each([
  [0, '0 min'],
  [45, '45 min'],
  [59.6, '1 h'],
  [60, '1 h'],
  [95, '1 h 35 min'],
  [119.7, '2 h'],
  [-35, '-35 min'],
  [61_500, '1,025 h'],
])('%d minutes are %s', (minutes, words) => expect(formatDuration(minutes, US)).toBe(words))

test('clock times of fields, and minutes past midnight', () => {
  expect(formatClockTimes('07:00', '15:30', US)).toBe('7:00\u00a0AM – 3:30\u00a0PM')
  expect([formatMinute(0, US), formatMinute(490, US), formatMinute(1441, US)]).toEqual(['12:00\u00a0AM', '8:10\u00a0AM', '12:01\u00a0AM'])
})

// US clocks go back on 2026-11-01 at 2:00 (Energy Policy Act of 2005, section 110): the same clock comes twice.
test('through a change of clocks and over midnight both ends stand', () => {
  expect(formatClocks('2026-11-01T06:30:00Z', '2026-11-01T07:15:00Z', US)).toBe('1:30 – 1:15\u00a0AM')
  expect(formatClocks('2026-12-04T02:00:00Z', '2026-12-04T08:00:00Z', US)).toBe('8:00\u00a0PM – 2:00\u00a0AM')
})

test.each(['yesterday', '2026-02-30', '12/03/2026'])('%s is no day to write', (day) =>
  expect(() => formatDay(day, US)).toThrow('YYYY-MM-DD'),
)
