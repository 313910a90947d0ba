import { expect, test } from 'vitest'
import { checksFrom } from './record-from-answers.ts'
import { tankAsFound } from './tank-as-found.ts'

const RECORDED = { diameterIn: 10, heightIn: 54 }
const answer = (text: string, unit: string, value: number) => ({ text, unit, value, at: '2026-12-03T18:00:00.000Z' })
const found = (answers: Parameters<typeof checksFrom>[0]) => tankAsFound(RECORDED, checksFrom(answers, false), 'en-US')

// 4 ft 4 in = 52 in; 122 cm / 2.54 = 48.03 in.
test.each([
  [{}, RECORDED],
  [{ 'found-height-in': answer('48', 'in', 48) }, { diameterIn: 10, heightIn: 48 }],
  [{ 'found-height-in': answer('4\'4"', 'in', 52) }, { diameterIn: 10, heightIn: 52 }],
  [
    { 'found-diameter-in': answer('9', 'in', 9), 'found-height-in': answer('48 in', 'in', 48) },
    { diameterIn: 9, heightIn: 48 },
  ],
  [{ 'found-diameter-in': answer('abc', 'in', Number.NaN) }, RECORDED],
])('one measurement is enough, in the way it was typed: %j', (answers, size) => expect(found(answers)).toEqual(size))

test('a height in centimeters stands in inches', () =>
  expect(found({ 'found-height-in': answer('122 cm', 'cm', 48.03) }).heightIn).toBeCloseTo(48.03, 2))
