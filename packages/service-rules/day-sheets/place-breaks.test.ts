import { expect, test } from 'vitest'
import { placeBreaks } from './place-breaks.ts'

/** Clock times of one day as milliseconds; worked by hand. */
const at = (clock: string) => Date.parse(`2026-12-03T${clock}:00Z`)
const from = (start: string, end: string) => ({ startMs: at(start), endMs: at(end) })
const clock = (ms: number) => new Date(ms).toISOString().slice(11, 16)
const hours = from('08:00', '17:00')
const lunch = { fromMs: at('11:30'), untilMs: at('13:00'), lengthMs: 30 * 60_000 }

test.each([
  ['a day without anything', [], '11:30', true],
  ['a visit until a quarter past twelve', [from('11:00', '12:15')], '12:15', true],
  ['a visit that leaves a quarter of an hour', [from('11:45', '12:45')], '12:45', true],
  ['a visit over all of it', [from('11:00', '13:01')], '11:30', false],
  ['a gap that begins at the last moment', [from('11:00', '13:00'), from('13:30', '15:00')], '13:00', true],
  ['a gap a minute too short', [from('11:00', '13:00'), from('13:29', '15:00')], '11:30', false],
] as const)('lunch on %s', (_, taken, start, fits) => {
  const [placed] = placeBreaks(hours, taken, [lunch])
  expect([clock(placed?.startMs ?? 0), clock(placed?.endMs ?? 0), placed?.fits]).toEqual([start, clock(at(start) + 30 * 60_000), fits])
})

test('two breaks do not lie over each other', () => {
  const placed = placeBreaks(hours, [], [lunch, { ...lunch, lengthMs: 15 * 60_000 }])
  expect(placed.map((one) => clock(one.startMs))).toEqual(['11:30', '12:00'])
})
