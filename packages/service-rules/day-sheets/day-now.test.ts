import { describe, expect, test } from 'vitest'
import { expectDay, type VisitNow } from './day-now.ts'

/** Clock times of one day as milliseconds; every expected time below is worked by hand. */
const at = (clock: string) => Date.parse(`2026-12-03T${clock}:00Z`)
const clock = (ms: number) => new Date(ms).toISOString().slice(11, 16)
const visit = (id: string, from: string, until: string, more: Partial<VisitNow> = {}): VisitNow => ({
  ...{ id, state: 'booked', startMs: at(from), endMs: at(until), startedMs: null, closedMs: null, untilMs: null },
  ...{ promisedUntilMs: null, driveMinutes: 15, ...more },
})
const expected = (visits: VisitNow[], now: string) =>
  expectDay(at('08:00'), visits, at(now)).map((one) => [
    one.id,
    clock(one.startMs),
    clock(one.endMs),
    one.lateMinutes,
    one.over,
    one.missed,
  ])

const morning = (more: Partial<VisitNow> = {}) => visit('a', '08:15', '10:00', more)
const noon = (more: Partial<VisitNow> = {}) => visit('b', '10:30', '11:30', more)
const afternoon = (more: Partial<VisitNow> = {}) => visit('c', '14:00', '15:00', more)

describe('a crew’s day, seen from now', () => {
  test('as planned while nothing went wrong', () => {
    expect(expected([morning({ state: 'under-way', startedMs: at('08:20') }), noon(), afternoon()], '09:30')).toEqual([
      ['a', '08:20', '10:05', 0, false, false],
      ['b', '10:30', '11:30', 0, false, false],
      ['c', '14:00', '15:00', 0, false, false],
    ])
  })
  test('a visit that runs over pushes the next by what its gap leaves, and no further than a later gap takes', () => {
    // 11:00 and a quarter of an hour of driving: 45 minutes late, and done at 12:15, long before two.
    expect(
      expected([morning({ state: 'under-way', startedMs: at('08:15') }), noon({ promisedUntilMs: at('11:00') }), afternoon()], '11:00'),
    ).toEqual([
      ['a', '08:15', '11:00', 0, true, false],
      ['b', '11:15', '12:15', 45, false, true],
      ['c', '14:00', '15:00', 0, false, false],
    ])
  })
  test('“until one” is what those after it are told by, before it is one', () => {
    const told = expected([morning({ state: 'under-way', startedMs: at('08:15'), untilMs: at('13:00') }), noon(), afternoon()], '09:00')
    expect(told).toEqual([
      ['a', '08:15', '13:00', 0, false, false],
      ['b', '13:15', '14:15', 165, false, false],
      ['c', '14:30', '15:30', 30, false, false],
    ])
  })
  test('a visit that nobody began begins now at the soonest; a few minutes are no news, a promise is', () => {
    expect(expected([morning(), noon()], '08:22')[0]).toEqual(['a', '08:22', '10:07', 0, false, false])
    expect(expected([morning({ promisedUntilMs: at('08:20') }), noon()], '08:22')[0]).toEqual(['a', '08:22', '10:07', 7, false, true])
    expect(expected([morning(), noon()], '08:45')).toEqual([
      ['a', '08:45', '10:30', 30, false, false],
      ['b', '10:45', '11:45', 15, false, false],
    ])
  })
  test('a visit of which nobody heard beyond its end counts as done as planned, and says so', () => {
    const [first, next] = expectDay(at('08:00'), [morning(), noon()], at('10:10'))
    expect(first).toMatchObject({ silent: true, lateMinutes: 0, endMs: at('10:00') })
    expect(next).toMatchObject({ silent: false, lateMinutes: 0, startMs: at('10:30') })
  })
  test('a visit closed out late in the evening does not hold up the day', () => {
    const closed = morning({ state: 'closed', startedMs: at('08:15'), closedMs: at('19:00') })
    expect(expected([closed, noon()], '10:20')[1]).toEqual(['b', '10:30', '11:30', 0, false, false])
  })
})
