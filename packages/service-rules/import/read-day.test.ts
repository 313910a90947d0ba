import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decideDayOrder } from './decide-day-order.ts'
import { readDay } from './read-day.ts'

const today = '2026-05-04'
const display = { locale: 'en-US' }
const undecided = { today, dayOrder: 'undecided', display } as const

function span(text: string, dayOrder: 'day-first' | 'month-first' | 'undecided' = 'undecided') {
  const reading = readDay(text, { today, dayOrder, display })
  return reading.ok ? `${reading.value.earliestDay} ${reading.value.latestDay} ${reading.value.precision}` : reading.reason
}

describe('dates as firms write them', () => {
  test.each([
    ['2015-03-14', '2015-03-14 2015-03-14 day'],
    ['2015/3/14', '2015-03-14 2015-03-14 day'],
    ['20150314', '2015-03-14 2015-03-14 day'],
    ['14/03/2015', '2015-03-14 2015-03-14 day'],
    ['03/14/2015', '2015-03-14 2015-03-14 day'],
    ['14.3.15', '2015-03-14 2015-03-14 day'],
    ['04/04/2015', '2015-04-04 2015-04-04 day'],
    ['14 Mar 2015', '2015-03-14 2015-03-14 day'],
    ['March 14th, 2015', '2015-03-14 2015-03-14 day'],
    ['14-Mar-15', '2015-03-14 2015-03-14 day'],
    ['Sat 14 Mar 2015', '2015-03-14 2015-03-14 day'],
    ['3/14/2015 12:00:00 AM', '2015-03-14 2015-03-14 day'],
    ['2015-03-14T00:00:00.000Z', '2015-03-14 2015-03-14 day'],
    ['29/02/2024', '2024-02-29 2024-02-29 day'],
    ['2015', '2015-01-01 2015-12-31 year'],
    ["'17", '2017-01-01 2017-12-31 year'],
    ["'99", '1999-01-01 1999-12-31 year'],
    ['May 2018', '2018-05-01 2018-05-31 month'],
    ['May-18', '2018-05-01 2018-05-31 month'],
    ["May '18", '2018-05-01 2018-05-31 month'],
    ['Sept. 2012', '2012-09-01 2012-09-30 month'],
    ['05/2011', '2011-05-01 2011-05-31 month'],
    ['05/11', '2011-05-01 2011-05-31 month'],
    ['3/14', '2014-03-01 2014-03-31 month'],
    ['2011-05', '2011-05-01 2011-05-31 month'],
    ['02/2012', '2012-02-01 2012-02-29 month'],
    ['spring 2014', '2014-03-01 2014-05-31 season'],
    ['Fall 2013', '2013-09-01 2013-11-30 season'],
    ['winter 2014', '2013-12-01 2015-02-28 season'],
    ['Q2 2014', '2014-04-01 2014-06-30 season'],
    ['early 2014', '2014-01-01 2014-04-30 season'],
    ['late 2013', '2013-09-01 2013-12-31 season'],
    ['1990s', '1990-01-01 1999-12-31 between'],
    ['2010-2012', '2010-01-01 2012-12-31 between'],
    ['2010 or 2011', '2010-01-01 2011-12-31 between'],
    ['between May 2010 and June 2011', '2010-05-01 2011-06-30 between'],
    // UFC 3-240-13FN, 2-2.5.1.4: resin lasts 5 to 25 years, which closes "before" at its far end.
    ['before 2015', '1989-01-01 2014-12-31 before'],
    ['pre-2015', '1989-01-01 2014-12-31 before'],
    ['by 2015', '1990-01-01 2015-12-31 before'],
    ['before May 2010', '1985-01-01 2010-04-30 before'],
    ['since 2010', '2010-01-01 2026-05-04 after'],
    ['after 2010', '2011-01-01 2026-05-04 after'],
    ['ca. 2012', '2011-01-01 2013-12-31 about'],
    ['c2012', '2011-01-01 2013-12-31 about'],
    ['~2012', '2011-01-01 2013-12-31 about'],
    ['2009?', '2008-01-01 2010-12-31 about'],
    ['2012ish', '2011-01-01 2013-12-31 about'],
    // The present year ends today as far as a record can know.
    ['2026', '2026-01-01 2026-05-04 year'],
    ['May 2026', '2026-05-01 2026-05-04 month'],
    // Excel: serial 41275 is 1 January 2013, and 36526 is 1 January 2000 (Microsoft's DATEVALUE documentation counts from 1 January 1900).
    ['41275', '2013-01-01 2013-01-01 day'],
    ['36526.75', '2000-01-01 2000-01-01 day'],
  ])('%j', (text, expected) => expect(span(text)).toBe(expected))

  test('an ambiguous date follows the order of its column, and is a problem without one', () => {
    expect(span('03/04/2015', 'day-first')).toBe('2015-04-03 2015-04-03 day')
    expect(span('03/04/2015', 'month-first')).toBe('2015-03-04 2015-03-04 day')
    expect(span('03/04/2015')).toMatch(/day or the month first/)
  })

  test.each([
    ['2030', /future/],
    ['12/2026', /future/],
    ['after 2026', /future/],
    ['31/02/2015', /no day 31/],
    ['2015-02-30', /no day 30/],
    ['29/02/2023', /no day 29/],
    ['13/13/2015', /no month 13/],
    ['2015-13-01', /no month 13/],
    ['17', /not understood/],
    ['May 18', /year with four digits/],
    ['1900', /before 1950/],
    ['0514', /not understood/],
    ['last summer', /not understood/],
    ['555-0142', /not understood/],
    ['2012-2010', /before the first/],
    ['', /not understood/],
    ['99999', /not understood/],
  ])('%j is refused', (text, reason) => expect(span(text)).toMatch(reason))
})

// Months and their order by hand from CLDR 48 (en, en-GB: yMMMd, yMMM and their intervals).
test.each([
  ['before 2015', 'en-US', 'Read as at most 25 years before that: Jan 1, 1989 – Dec 31, 2014.'],
  ['before 2015', 'en-GB', 'Read as at most 25 years before that: 1 Jan 1989 – 31 Dec 2014.'],
  ['since 2024', 'en-US', 'Read as Jan 1, 2024 to today.'],
  ['ca. 14 Mar 2015', 'en-GB', '"About" was read as 11 Feb – 14 Apr 2015.'],
  ['early 2015', 'en-US', '"early 2015" was read as Jan 1 – Apr 30, 2015.'],
  ['3/14', 'en-US', '"3/14" was read as a month and a year: Mar 2014.'],
  // Excel's serial 42077 is 14 March 2015 in its 1900 system.
  ['42077', 'en-US', "42077 was read as a spreadsheet's day number: Mar 14, 2015."],
])('what is taken for granted of %s is said in %s', (text, locale, sentence) =>
  expect(readDay(text, { ...undecided, display: { locale } })).toMatchObject({ ok: true, assumptions: [sentence] }),
)

describe('the order of a column', () => {
  test.each([
    [['14/03/2015', '03/04/2015'], 'day-first', 1],
    [['03/14/2015', '03/04/2015', 'x'], 'month-first', 1],
    [['03/04/2015', '05/06/2015'], 'undecided', 2],
    [['14/03/2015', '03/14/2015', '1/2/15'], 'undecided', 1],
    [['2015', '2015-03-04', '4/4/2015'], 'undecided', 0],
  ] as const)('%j', (values, order, ambiguousCount) => expect(decideDayOrder(values)).toMatchObject({ order, ambiguousCount }))
})

test('earliest is never after latest, both are days of the calendar, and nothing lies in the future', () => {
  const word = fc.constantFrom(
    'before',
    'after',
    'ca.',
    'early',
    'late',
    'between',
    'and',
    '-',
    '/',
    '.',
    ' ',
    'May',
    'dec',
    'spring',
    'winter',
    '?',
    "'",
    'since',
    'to',
  )
  const number = fc
    .oneof(fc.integer({ min: 0, max: 31 }), fc.integer({ min: 1940, max: 2040 }), fc.integer({ min: 0, max: 99_999 }))
    .map(String)
  const ugly = fc.array(fc.oneof(word, number), { minLength: 1, maxLength: 7 }).map((parts) => parts.join(''))
  const spaced = fc.array(fc.oneof(word, number), { minLength: 1, maxLength: 6 }).map((parts) => parts.join(' '))
  fc.assert(
    fc.property(fc.oneof(ugly, spaced, fc.string()), fc.constantFrom('day-first', 'month-first', 'undecided'), (text, dayOrder) => {
      const reading = readDay(text, { today, dayOrder: dayOrder as 'day-first', display })
      // No day is said as it is kept, whatever was typed.
      if (reading.ok && reading.assumptions.some((said) => /\d{4}-\d{2}-\d{2}/.test(said.replaceAll(`"${text}"`, '')))) return false
      if (!reading.ok) return reading.reason.length > 10
      const { earliestDay, latestDay } = reading.value
      return isIsoDay(earliestDay) && isIsoDay(latestDay) && earliestDay <= latestDay && latestDay <= today
    }),
    { numRuns: 20_000 },
  )
})

test('every real day written in ISO comes back as itself', () => {
  fc.assert(
    fc.property(fc.date({ min: new Date('1950-01-01'), max: new Date('2026-05-04'), noInvalidDate: true }), (date) => {
      const day = date.toISOString().slice(0, 10)
      const reading = readDay(day, undecided)
      return reading.ok && reading.value.earliestDay === day && reading.value.latestDay === day
    }),
  )
})
