import { afterEach, describe, expect, test } from 'vitest'
import { addDays, dayIn, daysBetween, instantIn, now, setClock } from './clock.ts'
import { newId } from './ids.ts'

afterEach(() => setClock())

test('now is the clock that was set, and the real one again', () => {
  setClock(() => new Date('2026-12-02T16:00:00Z'))
  expect(now().toISOString()).toBe('2026-12-02T16:00:00.000Z')
  setClock()
  expect(Math.abs(now().getTime() - Date.now())).toBeLessThan(1000)
})

describe('the day in a zone', () => {
  // Offsets from the IANA time zone database: Phoenix is UTC-7 all year, Kiritimati UTC+14, New York UTC-4 in summer.
  test.each([
    ['America/Phoenix', '2026-12-03T06:59:59Z', '2026-12-02'],
    ['America/Phoenix', '2026-12-03T07:00:00Z', '2026-12-03'],
    ['Pacific/Kiritimati', '2026-12-31T10:00:00Z', '2027-01-01'],
    ['America/New_York', '2026-07-01T03:59:59Z', '2026-06-30'],
  ])('%s at %s is %s', (zone, instant, day) => expect(dayIn(zone, new Date(instant))).toBe(day))
})

describe('the instant of a minute of a day', () => {
  // US clocks go forward on 2026-03-08 and back on 2026-11-01 at 2:00 (Energy Policy Act of 2005, section 110).
  test.each([
    ['America/Phoenix', '2026-12-03', 8 * 60, '2026-12-03T15:00:00.000Z'],
    ['America/Chicago', '2026-03-07', 8 * 60, '2026-03-07T14:00:00.000Z'],
    ['America/Chicago', '2026-03-08', 8 * 60, '2026-03-08T13:00:00.000Z'],
    ['America/Chicago', '2026-03-08', 2 * 60 + 30, '2026-03-08T08:30:00.000Z'], // a time that is not: half an hour after the gap
  ])('%s %s minute %i is %s', (zone, day, minute, instant) => expect(instantIn(zone, day, minute).toISOString()).toBe(instant))
})

test('days are counted on the calendar, over leap days and months', () => {
  expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2)
  expect(daysBetween('2026-03-01', '2026-02-28')).toBe(-1)
  expect(addDays('2026-12-31', 1)).toBe('2027-01-01')
  expect(addDays('2024-03-01', -1)).toBe('2024-02-29')
})

test('ids are UUIDs of version 7 (RFC 9562, section 5.7), in the order they were made', () => {
  const ids = Array.from({ length: 500 }, () => newId())
  expect(ids.every((id) => /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(id))).toBe(true)
  expect([...ids].sort()).toEqual(ids)
  expect(new Set(ids).size).toBe(500)
})
