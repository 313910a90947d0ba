import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findInNotes } from './find-in-notes.ts'

const options = { today: '2026-05-04', dayOrder: 'undecided', display: { locale: 'en-US' } } as const
const found = (notes: string) => findInNotes(notes, options).facts.map(({ kind, day }) => `${kind} ${day.earliestDay} ${day.latestDay}`)
const year = (kind: string, number: number) => `${kind} ${number}-01-01 ${number}-12-31`

describe('what happened', () => {
  test.each([
    ['rebed 2016', [year('rebedded', 2016)]],
    ['REBED IN 2016!!', [year('rebedded', 2016)]],
    ['Re-bed (2016)', [year('rebedded', 2016)]],
    ["replaced bed in '17", [year('rebedded', 2017)]],
    ['2016 rebed', [year('rebedded', 2016)]],
    ['new resin 3/14', ['rebedded 2014-03-01 2014-03-31']],
    ['changed resin 5/18', ['rebedded 2018-05-01 2018-05-31']],
    ['resin changed May 2018', ['rebedded 2018-05-01 2018-05-31']],
    ['resin replaced by us, June 2014', ['rebedded 2014-06-01 2014-06-30']],
    ['rebedded 14 May 2018 with 10% resin', ['rebedded 2018-05-14 2018-05-14']],
    ['New resin May 14, 2018; customer declined filter', ['rebedded 2018-05-14 2018-05-14']],
    ['new resin 1.5 cu ft 2014', [year('rebedded', 2014)]],
    ['resin swap spring 2012', ['rebedded 2012-03-01 2012-05-31']],
    ['rebed 2014 and 2021', [year('rebedded', 2014), year('rebedded', 2021)]],
    ['rebed: 2016?', ['rebedded 2015-01-01 2017-12-31']],
    ['last rebed before 2015', ['rebedded 1989-01-01 2014-12-31']],
    ['resin changed 2018-05-12', ['rebedded 2018-05-12 2018-05-12']],
    ['installed 2009', [year('installed', 2009)]],
    ['new softener 2013', [year('installed', 2013)]],
    ['softener installed by previous owner around 2005', ['installed 2004-01-01 2006-12-31']],
    ['Installed 2009, rebed 2016', [year('installed', 2009), year('rebedded', 2016)]],
    ['installed 2009 rebed 2016', [year('installed', 2009), year('rebedded', 2016)]],
    ['rebed 2016, quoted new head 2019', [year('rebedded', 2016)]],
    ['2011: new resin, 2018: rebed', [year('rebedded', 2011), year('rebedded', 2018)]],
    ['wants rebed. Installed 2008', [year('installed', 2008)]],
    ['carbon filter installed 2012, softener installed 2009', [year('installed', 2009)]],
    ['customer says resin never changed, installed 2003', [year('installed', 2003)]],
    ['Rebed Sept. 2012. Will call', ['rebedded 2012-09-01 2012-09-30']],
    // Either 4 March or 3 April: both are covered rather than one guessed.
    ['rebed 3/4/2015', ['rebedded 2015-03-04 2015-04-03']],
  ])('%j', (notes, expected) => expect(found(notes)).toEqual(expected))
})

describe('what did not', () => {
  test.each([
    'rebed quoted 2019',
    'quoted rebed 2019',
    'phone 2016-555-0142',
    'new resin? phone 2016 555 0142',
    'no rebed since 2010',
    'never rebedded, 2010 test ok',
    'not rebedded 2016',
    'needs rebed 2027',
    'rebed due 2025',
    'rebed 2019 cancelled',
    'rebed planned for May 2024',
    'rebedded 2031',
    'declined rebed 2018',
    'new valve installed 2015',
    'flower bed changed 2016',
    'Gate code 2016. Dog.',
    'rebed $2016',
    'paid invoice 2016 for rebed',
    'call 2016 5550142 re rebed',
    'rebed',
    '2016',
    '',
  ])('%j', (notes) => expect(found(notes)).toEqual([]))

  test('a dated event that was not believed is shown with its reason', () => {
    expect(findInNotes('rebed quoted 2019', options).passedOver).toEqual([
      { quote: 'rebed quoted 2019', reason: '"quoted" says it was not done, or not then.' },
    ])
    expect(findInNotes('Rebed May 18', options).passedOver[0]?.reason).toMatch(/four digits/)
  })
})

test('any jumble of such words gives facts that lie in the past, quoted from the notes', () => {
  const word = fc.constantFrom(
    'rebed',
    'new resin',
    'installed',
    'no',
    'quoted',
    '2016',
    "'17",
    '3/14',
    'May',
    '14,',
    '2018',
    '.',
    ',',
    ';',
    'and',
    'phone',
    '555',
    'before',
    '?',
    '3/4/2015',
  )
  fc.assert(
    fc.property(fc.array(word, { maxLength: 14 }), (words) => {
      const notes = words.join(' ')
      return findInNotes(notes, options).facts.every(
        ({ day, quote }) => day.earliestDay <= day.latestDay && day.latestDay <= options.today && quote.length > 0,
      )
    }),
    { numRuns: 5000 },
  )
})

describe('the cost grows with the length of the notes, not with its square', () => {
  const msFor = (work: () => void) => {
    const since = performance.now()
    work()
    return performance.now() - since
  }

  // The same text as sixteen short notes and as one long: about the same time; by the square, sixteen times as long. The least of several turns: what else the
  // machine does makes none shorter.
  test.each(['may 1 ', 'rebed 2016 ', '2016 and ', 'rebed 2014 and 2015 and 2016 and '])('%j again and again', (words) => {
    const short = words.repeat(Math.ceil(4_000 / words.length))
    const long = short.repeat(16)
    const turns = Array.from({ length: 10 }, () => ({
      asMany: msFor(() => {
        for (let time = 0; time < 16; time++) findInNotes(short, options)
      }),
      asOne: msFor(() => findInNotes(long, options)),
    }))
    const least = (which: 'asMany' | 'asOne') => Math.min(...turns.map((one) => one[which]))
    expect(least('asOne') / least('asMany')).toBeLessThan(5)
  })
})
