import { expect, test } from 'vitest'
import { changesWords, reasonWords } from './change-words.ts'

const display = { unitSystem: 'us', locale: 'en-US', timeZone: 'America/Chicago', currency: 'USD' } as const
const change = (field: string, from: unknown, to: unknown) => ({ field, known: true, from, to }) as never

test('a figure of the company’s own is said as its settings say it, a fact of a record by its name and values', () => {
  const pace = { factor: 1.12, shortFactor: 1.1, longFactor: 1.15, roadFactor: 1, drives: 43, days: 9 }
  expect(changesWords({ entity: 'firm-figure', changes: [change('drives:pace', null, pace)] }, display)).toEqual([
    'Your crews’ driving pace: not set → drives take 12% longer than usual, from 43 recorded drives',
  ])
  expect(changesWords({ entity: 'company-settings', changes: [change('riskLimit', 0.3, 0.2)] }, display)).toEqual([
    'Highest risk for a bed: 30% → 20%',
  ])
  expect(changesWords({ entity: 'softener', changes: [change('peopleServed', 2, 4)] }, display)).toEqual(['people served: 2 → 4'])
})

test('an archive’s reason has its words; what somebody typed stands in quotes, be it the same word', () => {
  expect(reasonWords({ operation: 'archive.softener: archived', note: 'unit-removed' })).toEqual(['Unit removed'])
  expect(reasonWords({ operation: 'firm.change-figure: changed', note: 'left' })).toEqual(['“left”'])
  expect(reasonWords({ operation: 'jobs.book: booked', note: null })).toEqual([])
})
