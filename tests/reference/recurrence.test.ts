import { daysOfRule } from '@almanac/service-rules/agreements/turn-rule'
import { describe, expect, test } from 'vitest'

/**
 * RFC 5545 (Internet Calendaring and Scheduling Core Object Specification, September 2009), section 3.8.5.3: its own worked examples, all that go by days. A
 * case has the rule, the day of DTSTART and the days of the RFC's answer: '1997 9: 2 9, 10: 7' are 2 and 9 September and 7 October 1997. Where the RFC ends
 * with "...", days are compared up to the last one it writes. Turns here are at midnight UTC, where the RFC's are at nine in New York, so its UNTIL is written as midnight of the last day that it leaves.
 */
const EXAMPLES: [string, string, string, string][] = [
  ['daily for 10', '1997-09-02', 'FREQ=DAILY;COUNT=10', '1997 9: 2 3 4 5 6 7 8 9 10 11'],
  ['daily until December 24', '1997-09-02', 'FREQ=DAILY;UNTIL=19971223T000000Z', '1997 9: 2-30, 10: 1-31, 11: 1-30, 12: 1-23'],
  [
    'every other day',
    '1997-09-02',
    'FREQ=DAILY;INTERVAL=2',
    '1997 9: 2 4 6 8 10 12 14 16 18 20 22 24 26 28 30, 10: 2 4 6 8 10 12 14 16 18 20 22 24 26 28 30, 11: 1 3 5 7 9 11 13 15 17 19 21 23 25 27 29, 12: 1 3',
  ],
  ['every 10 days, 5 times', '1997-09-02', 'FREQ=DAILY;INTERVAL=10;COUNT=5', '1997 9: 2 12 22, 10: 2 12'],
  [
    'each day in January for 3 years, yearly',
    '1998-01-01',
    'FREQ=YEARLY;UNTIL=20000131T000000Z;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA',
    '1998 1: 1-31; 1999 1: 1-31; 2000 1: 1-31',
  ],
  ['the same, daily', '1998-01-01', 'FREQ=DAILY;UNTIL=20000131T000000Z;BYMONTH=1', '1998 1: 1-31; 1999 1: 1-31; 2000 1: 1-31'],
  ['weekly for 10', '1997-09-02', 'FREQ=WEEKLY;COUNT=10', '1997 9: 2 9 16 23 30, 10: 7 14 21 28, 11: 4'],
  [
    'weekly until December 24',
    '1997-09-02',
    'FREQ=WEEKLY;UNTIL=19971223T000000Z',
    '1997 9: 2 9 16 23 30, 10: 7 14 21 28, 11: 4 11 18 25, 12: 2 9 16 23',
  ],
  [
    'every other week',
    '1997-09-02',
    'FREQ=WEEKLY;INTERVAL=2;WKST=SU',
    '1997 9: 2 16 30, 10: 14 28, 11: 11 25, 12: 9 23; 1998 1: 6 20, 2: 3 17',
  ],
  [
    'Tuesday and Thursday for five weeks, until',
    '1997-09-02',
    'FREQ=WEEKLY;UNTIL=19971006T000000Z;WKST=SU;BYDAY=TU,TH',
    '1997 9: 2 4 9 11 16 18 23 25 30, 10: 2',
  ],
  [
    'Tuesday and Thursday for five weeks, counted',
    '1997-09-02',
    'FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH',
    '1997 9: 2 4 9 11 16 18 23 25 30, 10: 2',
  ],
  [
    'every other week, three days of it, until December 24',
    '1997-09-01',
    'FREQ=WEEKLY;INTERVAL=2;UNTIL=19971223T000000Z;WKST=SU;BYDAY=MO,WE,FR',
    '1997 9: 1 3 5 15 17 19 29, 10: 1 3 13 15 17 27 29 31, 11: 10 12 14 24 26 28, 12: 8 10 12 22',
  ],
  [
    'every other week on Tuesday and Thursday, 8 times',
    '1997-09-02',
    'FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH',
    '1997 9: 2 4 16 18 30, 10: 2 14 16',
  ],
  [
    'first Friday of the month, 10 times',
    '1997-09-05',
    'FREQ=MONTHLY;COUNT=10;BYDAY=1FR',
    '1997 9: 5, 10: 3, 11: 7, 12: 5; 1998 1: 2, 2: 6, 3: 6, 4: 3, 5: 1, 6: 5',
  ],
  ['first Friday until December 24', '1997-09-05', 'FREQ=MONTHLY;UNTIL=19971223T000000Z;BYDAY=1FR', '1997 9: 5, 10: 3, 11: 7, 12: 5'],
  [
    'first and last Sunday every other month, 10 times',
    '1997-09-07',
    'FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU',
    '1997 9: 7 28, 11: 2 30; 1998 1: 4 25, 3: 1 29, 5: 3 31',
  ],
  [
    'last Monday but one, 6 months',
    '1997-09-22',
    'FREQ=MONTHLY;COUNT=6;BYDAY=-2MO',
    '1997 9: 22, 10: 20, 11: 17, 12: 22; 1998 1: 19, 2: 16',
  ],
  ['last day but two of the month', '1997-09-28', 'FREQ=MONTHLY;BYMONTHDAY=-3', '1997 9: 28, 10: 29, 11: 28, 12: 29; 1998 1: 29, 2: 26'],
  [
    '2nd and 15th of the month, 10 times',
    '1997-09-02',
    'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15',
    '1997 9: 2 15, 10: 2 15, 11: 2 15, 12: 2 15; 1998 1: 2 15',
  ],
  [
    'first and last day of the month, 10 times',
    '1997-09-30',
    'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1',
    '1997 9: 30, 10: 1 31, 11: 1 30, 12: 1 31; 1998 1: 1 31, 2: 1',
  ],
  [
    'every 18 months on the 10th to the 15th, 10 times',
    '1997-09-10',
    'FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15',
    '1997 9: 10 11 12 13 14 15; 1999 3: 10 11 12 13',
  ],
  [
    'every Tuesday, every other month',
    '1997-09-02',
    'FREQ=MONTHLY;INTERVAL=2;BYDAY=TU',
    '1997 9: 2 9 16 23 30, 11: 4 11 18 25; 1998 1: 6 13 20 27, 3: 3 10 17 24 31',
  ],
  [
    'June and July, 10 times',
    '1997-06-10',
    'FREQ=YEARLY;COUNT=10;BYMONTH=6,7',
    '1997 6: 10, 7: 10; 1998 6: 10, 7: 10; 1999 6: 10, 7: 10; 2000 6: 10, 7: 10; 2001 6: 10, 7: 10',
  ],
  [
    'every other year in January, February and March, 10 times',
    '1997-03-10',
    'FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3',
    '1997 3: 10; 1999 1: 10, 2: 10, 3: 10; 2001 1: 10, 2: 10, 3: 10; 2003 1: 10, 2: 10, 3: 10',
  ],
  [
    '1st, 100th and 200th day of every third year, 10 times',
    '1997-01-01',
    'FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200',
    '1997 1: 1, 4: 10, 7: 19; 2000 1: 1, 4: 9, 7: 18; 2003 1: 1, 4: 10, 7: 19; 2006 1: 1',
  ],
  ['20th Monday of the year', '1997-05-19', 'FREQ=YEARLY;BYDAY=20MO', '1997 5: 19; 1998 5: 18; 1999 5: 17'],
  ['Monday of week 20', '1997-05-12', 'FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO', '1997 5: 12; 1998 5: 11; 1999 5: 17'],
  ['Thursdays in March', '1997-03-13', 'FREQ=YEARLY;BYMONTH=3;BYDAY=TH', '1997 3: 13 20 27; 1998 3: 5 12 19 26; 1999 3: 4 11 18 25'],
  [
    'Thursdays in June, July and August',
    '1997-06-05',
    'FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8',
    '1997 6: 5 12 19 26, 7: 3 10 17 24 31, 8: 7 14 21 28; 1998 6: 4 11 18 25, 7: 2 9 16 23 30, 8: 6 13 20 27',
  ],
  // DTSTART is taken out by EXDATE in the RFC, so the days begin after it.
  ['Friday the 13th', '1997-09-03', 'FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13', '1998 2: 13, 3: 13, 11: 13; 1999 8: 13; 2000 10: 13'],
  [
    'Saturday after the first Sunday of the month',
    '1997-09-13',
    'FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13',
    '1997 9: 13, 10: 11, 11: 8, 12: 13; 1998 1: 10, 2: 7, 3: 7, 4: 11, 5: 9, 6: 13',
  ],
  [
    'Tuesday after the first Monday of November, every four years',
    '1996-11-05',
    'FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8',
    '1996 11: 5; 2000 11: 7; 2004 11: 2',
  ],
  [
    'third of Tuesday, Wednesday and Thursday, three months',
    '1997-09-04',
    'FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3',
    '1997 9: 4, 10: 7, 11: 6',
  ],
  [
    'last weekday but one',
    '1997-09-29',
    'FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2',
    '1997 9: 29, 10: 30, 11: 27, 12: 30; 1998 1: 29, 2: 26, 3: 30',
  ],
  ['weeks that begin on Monday', '1997-08-05', 'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO', '1997 8: 5 10 19 24'],
  ['weeks that begin on Sunday', '1997-08-05', 'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU', '1997 8: 5 17 19 31'],
  ['a day that a month lacks is left out', '2007-01-15', 'FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5', '2007 1: 15 30, 2: 15, 3: 15 30'],
]

const two = (digits: string) => digits.padStart(2, '0')
const spans = (text: string) =>
  text.split(' ').flatMap((one) => {
    const [first, last] = one.split('-').map(Number)
    return last ? Array.from({ length: last - (first ?? 0) + 1 }, (_, later) => String((first ?? 0) + later)) : [one]
  })
/** '1997 9: 2 9, 10: 7; 1998 1: 3' as days. */
const written = (text: string) =>
  text.split('; ').flatMap((year) =>
    year
      .slice(5)
      .split(', ')
      .flatMap((month) => {
        const [name = '', days = ''] = month.split(': ')
        return spans(days).map((day) => `${year.slice(0, 4)}-${two(name)}-${two(day)}`)
      }),
  )

describe('the worked examples of RFC 5545, 3.8.5.3', () => {
  test.each(EXAMPLES)('%s', (_name, first, rule, answer) => {
    const days = written(answer)
    const until = /COUNT|UNTIL/.test(rule) ? '2099-12-31' : (days.at(-1) ?? '')
    expect(daysOfRule(rule, first, first, until)).toEqual(days)
  })
})
