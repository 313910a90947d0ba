import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { dayNow, watchClock } from './day-clock.ts'

// Chicago keeps UTC−6 in December: its midnight is 06:00 UTC.
const CHICAGO = 'America/Chicago'

/** A page that stays open; `wake` is what the browser does when its lid opens again. */
function openPage() {
  const listeners = new Set<EventListenerOrEventListenerObject>()
  return {
    addEventListener: (_: string, listener: EventListenerOrEventListenerObject) => void listeners.add(listener),
    removeEventListener: (_: string, listener: EventListenerOrEventListenerObject) => void listeners.delete(listener),
    wake: () => {
      for (const listener of listeners) if (typeof listener === 'function') listener(new Event('focus'))
    },
    left: () => listeners.size,
  }
}

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

test('the day goes on at midnight where the company is, not where the device or UTC is', () => {
  vi.setSystemTime('2026-12-02T05:59:30.000Z')
  const seen: string[] = []
  const stop = watchClock(() => seen.push(dayNow(CHICAGO)), openPage() as unknown as Window)
  expect(dayNow(CHICAGO)).toBe('2026-12-01')
  vi.advanceTimersByTime(30_000)
  expect(seen.at(-1)).toBe('2026-12-02')
  stop()
})

test('a tablet that slept over midnight knows the new day as soon as it wakes, though its timers stood still', () => {
  vi.setSystemTime('2026-12-02T02:00:00.000Z')
  const page = openPage()
  const seen: string[] = []
  const stop = watchClock(() => seen.push(dayNow(CHICAGO)), page as unknown as Window)
  vi.setSystemTime('2026-12-02T14:00:00.000Z')
  page.wake()
  expect(seen).toEqual(['2026-12-02'])
  stop()
  expect(page.left()).toBe(0)
  vi.advanceTimersByTime(3_600_000)
  expect(seen).toHaveLength(1)
})
