import { expect, test } from 'vitest'
import { suggestTimes } from './suggest-times.ts'

const place = (day: string, at: string, crew = 'a') => ({ day, at, crew })

test('suggests the best place of each of three days, in the order of the calendar', () => {
  const places = [place('2026-12-08', '13:00'), place('2026-12-07', '08:00'), place('2026-12-07', '12:00'), place('2026-12-09', '08:00')]
  expect(suggestTimes(places)).toEqual([place('2026-12-07', '08:00'), place('2026-12-08', '13:00'), place('2026-12-09', '08:00')])
})

test('with one day only, suggests other hours of it, and never the same hour of another crew', () => {
  const places = [place('2026-12-07', '08:00'), place('2026-12-07', '08:00', 'b'), place('2026-12-07', '12:00')]
  expect(suggestTimes(places)).toEqual([place('2026-12-07', '08:00'), place('2026-12-07', '12:00')])
})
