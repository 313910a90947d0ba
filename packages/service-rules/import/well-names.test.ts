import { expect, test } from 'vitest'
import { isOwnWell, namesWell } from './well-names.ts'

test('a word for a well is each home’s own; a name is a supply, and may be a well all the same', () => {
  const own = [
    'well',
    'Well',
    'private well',
    'OWN WELL',
    'their own well',
    'on a well',
    'drilled well',
    'well water',
    'Bore hole',
    'borehole',
    'pozo',
    'Hausbrunnen',
  ]
  expect(own.filter((name) => !isOwnWell(name))).toEqual([])
  const supplies = ['town', 'Wells town', 'Hill wells', 'Well Street main', 'Coldwell', 'mains', 'Maxwell private']
  expect(supplies.filter(isOwnWell)).toEqual([])
  expect(['Hill wells', 'Smith’s well', 'Well 3', 'Pozo Alto', 'shared well at the mill'].filter((name) => !namesWell(name))).toEqual([])
  expect(supplies.filter(namesWell)).toEqual(['Hill wells'])
})
