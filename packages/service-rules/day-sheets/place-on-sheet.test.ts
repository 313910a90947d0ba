import { describe, expect, test } from 'vitest'
import { freeGaps } from './free-gaps.ts'
import { crewLacks, placesOnSheet, type SheetToPlaceOn } from './place-on-sheet.ts'

/** Clock times of one day as milliseconds; worked by hand below. */
const at = (clock: string) => Date.parse(`2026-12-03T${clock}:00Z`)
const from = (start: string, end: string) => ({ startMs: at(start), endMs: at(end) })
const clock = (ms: number) => new Date(ms).toISOString().slice(11, 16)

const sheet: SheetToPlaceOn = {
  people: 2,
  hasVehicle: true,
  hours: from('08:00', '17:00'),
  taken: [from('10:52', '13:30'), from('08:00', '10:23')],
}

describe('free stretches of a day', () => {
  test('lie between, before and after what is taken', () => {
    const gaps = freeGaps(sheet.hours, sheet.taken)
    expect(gaps.map((g) => [clock(g.startMs), clock(g.endMs)])).toEqual([
      ['10:23', '10:52'],
      ['13:30', '17:00'],
    ])
  })
  test('ignore visits outside the hours and join those that overlap', () => {
    const gaps = freeGaps(from('08:00', '12:00'), [from('06:00', '09:00'), from('08:30', '10:00'), from('11:00', '14:00')])
    expect(gaps.map((g) => [clock(g.startMs), clock(g.endMs)])).toEqual([['10:00', '11:00']])
  })
  test('an empty day is one stretch, a full one has none', () => {
    expect(freeGaps(from('08:00', '12:00'), [])).toHaveLength(1)
    expect(freeGaps(from('08:00', '12:00'), [from('08:00', '12:00')])).toHaveLength(0)
  })
})

describe('places of a job', () => {
  const rebed = { kind: 'rebed', minutes: 150, crewSize: 2 } as const
  test('begin on the five minutes of the first stretch long enough', () => {
    const answer = placesOnSheet({ kind: 'delivery', minutes: 20, crewSize: 1 }, sheet, 0)
    if (!answer.fits) throw new Error(answer.reason)
    expect(answer.places.map((p) => [clock(p.startMs), clock(p.endMs)])).toEqual([
      ['10:25', '10:45'],
      ['13:30', '13:50'],
    ])
  })
  test('do not begin in the past', () => {
    const answer = placesOnSheet(rebed, sheet, at('14:01'))
    if (!answer.fits) throw new Error(answer.reason)
    expect(answer.places.map((p) => clock(p.startMs))).toEqual(['14:05'])
    expect(placesOnSheet(rebed, sheet, at('14:31'))).toEqual({ fits: false, reason: 'Needs 150 min; the longest free time is 145 min.' })
    expect(placesOnSheet(rebed, sheet, at('18:00'))).toMatchObject({ fits: false, reason: 'Full: this sheet has no time left.' })
  })
  test('a sheet with one person, or without a vehicle, says so', () => {
    expect(crewLacks(rebed, { people: 1, hasVehicle: true })).toBe('Needs 2 people; this sheet has one person.')
    expect(crewLacks(rebed, { people: 2, hasVehicle: false })).toBe('Needs a vehicle for the material; this sheet has none.')
    expect(crewLacks({ kind: 'annual-visit', minutes: 45, crewSize: 1 }, { people: 1, hasVehicle: false })).toBeNull()
  })
})
