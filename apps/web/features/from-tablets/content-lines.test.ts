import { expect, test } from 'vitest'
import { contentLines } from './content-lines.ts'

test('says every value of a record once, and nothing for what is empty', () => {
  const content = {
    record: {
      workDay: '2026-12-03',
      notes: '',
      oldBed: null,
      partsUsed: [{ name: 'Resin', quantity: 1.5 }],
      checks: [
        { stepId: 'bypass-proven', confirmed: true },
        { stepId: 'cap-out-counted', confirmed: false },
      ],
    },
  }
  expect(contentLines(content)).toEqual([
    { name: 'record, work day', text: '2026-12-03' },
    { name: 'record, parts used, 1, name', text: 'Resin' },
    { name: 'record, parts used, 1, quantity', text: '1.5' },
    { name: 'record, checks, 1, step id', text: 'bypass-proven' },
    { name: 'record, checks, 1, confirmed', text: 'true' },
    { name: 'record, checks, 2, step id', text: 'cap-out-counted' },
    { name: 'record, checks, 2, confirmed', text: 'false' },
  ])
  expect(contentLines('as a later app writes it')).toEqual([{ name: '', text: 'as a later app writes it' }])
})
