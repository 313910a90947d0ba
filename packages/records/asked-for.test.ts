import { expect, test } from 'vitest'
import { askedFor } from './asked-for.ts'

test('what is kept is read as it was written', () => {
  for (const kept of [
    { by: 'link', days: 'Tuesdays' },
    { by: 'call', quote: true, rebedDay: '2026-03-12', sees: 'beads', hard: { earliest: '2026-03-01', latest: '2026-05-31' } },
    { by: 'call', quote: false, rebedDay: null, sees: null, hard: null },
  ])
    expect(askedFor(JSON.parse(JSON.stringify(kept)))).toEqual(kept)
})

test('what a later release keeps otherwise leaves the page standing', () => {
  for (const other of [null, undefined, 'text', 7, [], {}, { by: 'letter' }]) expect(askedFor(other)).toBeNull()
  expect(askedFor({ by: 'call', sees: 'a noise', hard: { earliest: 7 }, quote: 'yes' })).toEqual({
    ...{ by: 'call', quote: false, rebedDay: null, sees: null, hard: null },
  })
})
