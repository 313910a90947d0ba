import { afterEach, expect, test } from 'vitest'
import { now, setClock } from './clock.ts'
import { newId } from './ids.ts'

afterEach(() => setClock())

test('now is the clock that was set, and the real one again', () => {
  setClock(() => new Date('2026-12-02T16:00:00Z'))
  expect(now().toISOString()).toBe('2026-12-02T16:00:00.000Z')
  setClock()
  expect(Math.abs(now().getTime() - Date.now())).toBeLessThan(1000)
})

test('ids are UUIDs of version 7 (RFC 9562, section 5.7), in the order they were made', () => {
  const ids = Array.from({ length: 500 }, () => newId())
  expect(ids.every((id) => /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(id))).toBe(true)
  expect([...ids].sort()).toEqual(ids)
  expect(new Set(ids).size).toBe(500)
})
