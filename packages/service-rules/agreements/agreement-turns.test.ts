import type { JobState } from '@almanac/records/job-state'
import { describe, expect, test } from 'vitest'
import { isLate, lastDayOf, leewayOf, standingOf, type TurnFacts, turnDays } from './agreement-turns.ts'

const yearly: TurnFacts = {
  ...{ rule: 'FREQ=YEARLY', firstDay: '2019-06-03', countsFrom: '2026-11-30', untilDay: null, endedDay: null, endWhy: null },
}

describe('the days on which turns are due', () => {
  test('begin with what was written down: nobody is told of years that were never asked for', () => {
    expect(turnDays(yearly, '2028-12-31')).toEqual(['2027-06-03', '2028-06-03'])
  })
  test('end with the last day agreed, counted, or the day it was ended', () => {
    expect(turnDays({ ...yearly, untilDay: '2028-06-03' }, '2030-12-31')).toEqual(['2027-06-03', '2028-06-03'])
    expect(turnDays({ ...yearly, untilDay: '2029-12-31', endedDay: '2028-06-02', endWhy: 'sold' }, '2030-12-31')).toEqual(['2027-06-03'])
  })
  test('are none of an agreement entered by mistake', () => {
    expect(turnDays({ ...yearly, endedDay: '2028-06-03', endWhy: 'mistake' }, '2030-12-31')).toEqual([])
    expect(lastDayOf({ untilDay: null, endedDay: '2028-06-03', endWhy: 'mistake' })).toBeNull()
  })
})

describe('a turn', () => {
  test('is open again when its job was called off, or closed without being done', () => {
    const of = (jobState: JobState) => standingOf({ dueDay: '2027-06-03', state: 'proposed', jobState })
    expect((['proposed', 'booked', 'held', 'under-way'] as const).map(of)).toEqual(Array(4).fill('under-way'))
    expect((['closed', 'called-off'] as const).map(of)).toEqual(['open', 'open'])
    expect(standingOf(undefined)).toBe('open')
    expect(standingOf({ dueDay: '2027-06-03', state: 'done', jobState: 'closed' })).toBe('done')
    expect(standingOf({ dueDay: '2027-06-03', state: 'skipped', jobState: null })).toBe('skipped')
  })
  test('of a year or half a year may be done a month sooner or later, of less in its own month, and salt in its own', () => {
    expect(['FREQ=YEARLY', 'FREQ=MONTHLY;INTERVAL=6', 'FREQ=WEEKLY;INTERVAL=26'].map((rule) => leewayOf('visits', rule))).toEqual([1, 1, 1])
    expect(['FREQ=MONTHLY;INTERVAL=5', 'FREQ=MONTHLY', 'FREQ=WEEKLY;INTERVAL=6'].map((rule) => leewayOf('rental', rule))).toEqual([0, 0, 0])
    expect(leewayOf('salt', 'FREQ=YEARLY')).toBe(0)
  })
  test('is late when its last month is over', () => {
    expect(isLate('2026-11-30', 0, '2026-11-30')).toBe(false)
    expect(isLate('2026-11-30', 0, '2026-12-01')).toBe(true)
    expect(isLate('2026-11-02', 1, '2026-12-31')).toBe(false)
    expect(isLate('2026-11-02', 1, '2027-01-01')).toBe(true)
  })
})
