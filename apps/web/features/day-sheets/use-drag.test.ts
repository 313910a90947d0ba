import type { DaySheet } from '@almanac/contract/day-sheets'
import { expect, test, vi } from 'vitest'

vi.mock('@/client/providers', () => ({ useSession: () => ({}) }))

const { firstRoom } = await import('./use-drag.ts')

const at = (clock: string) => `2026-12-03T${clock}:00.000Z`
const visit = (id: string, from: string, until: string) => ({ id, startsAt: at(from), endsAt: at(until) })
const sheet = {
  startsAt: at('08:00'),
  endsAt: at('16:00'),
  visits: [visit('a', '09:00', '11:00'), visit('b', '12:00', '15:00')],
} as DaySheet
const clock = (ms: number | null) => ms && new Date(ms).toISOString().slice(11, 16)

test.each([
  [60, '08:00', undefined, '08:00'],
  [61, '08:00', undefined, null],
  [60, '08:01', undefined, '11:00'],
  [60, '10:00', undefined, '11:00'],
  [120, '08:00', 'a', '08:00'],
  [240, '08:00', 'a', '08:00'],
  [60, '15:00', undefined, '15:00'],
  [61, '15:00', undefined, null],
] as const)('%d minutes from %s, moving %s: %s', (minutes, from, except, expected) => {
  expect(clock(firstRoom(sheet, minutes, Date.parse(at(from)), except))).toBe(expected)
})
