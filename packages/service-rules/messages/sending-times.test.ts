import { expect, test } from 'vitest'
import { minutesToNextTry, nextSendingTime } from './sending-times.ts'

// Phoenix is UTC-7 all year (no daylight saving); Chicago is UTC-6 and from 8 March 2026, 2 AM, UTC-5 (15 U.S.C. 260a); it goes back on 1 November.
test.each([
  ['America/Phoenix', '2026-12-02T16:00:00Z', '2026-12-02T16:00:00.000Z'],
  ['America/Phoenix', '2026-12-02T14:59:00Z', '2026-12-02T15:00:00.000Z'],
  ['America/Phoenix', '2026-12-03T02:59:59Z', '2026-12-03T02:59:59.000Z'],
  ['America/Phoenix', '2026-12-03T03:00:00Z', '2026-12-03T15:00:00.000Z'],
  ['America/Chicago', '2026-03-08T02:30:00Z', '2026-03-08T13:00:00.000Z'],
  ['America/Chicago', '2026-11-01T02:30:00Z', '2026-11-01T14:00:00.000Z'],
])('in %s at %s a message goes out at %s', (zone, at, out) => {
  expect(nextSendingTime(zone, new Date(at), { from: 480, until: 1200 }).toISOString()).toBe(out)
})

test('a firm’s own hours count', () => {
  const hours = { from: 9 * 60 + 30, until: 12 * 60 }
  const out = (at: string) => nextSendingTime('America/Phoenix', new Date(at), hours).toISOString()
  expect(out('2026-12-02T16:00:00Z')).toBe('2026-12-02T16:30:00.000Z')
  expect(out('2026-12-02T19:00:00Z')).toBe('2026-12-03T16:30:00.000Z')
})

test('each try waits at least as long as the one before, and there is a last one', () => {
  const waits: number[] = []
  for (let tries = 1; ; tries++) {
    const wait = minutesToNextTry(tries)
    if (wait === null) break
    expect(wait).toBeGreaterThanOrEqual(waits.at(-1) ?? 1)
    waits.push(wait)
  }
  expect(waits.length).toBeGreaterThan(3)
})
