import type { Board } from '@almanac/dispatch/propose/board'
import { buildProblem } from '@almanac/dispatch/propose/build-problem'
import { latestStart } from '@almanac/dispatch/slots/latest-start'
import { rankSlots } from '@almanac/dispatch/slots/rank-slots'
import { describe, expect, it } from 'vitest'
import { board, job, sheet } from '../support/dispatch/two-towns.ts'

const MONDAY = '2026-04-06'
const clock = (hours: number, minutes = 0) => hours * 60 + minutes

/** Earliest and latest start of each slot of the job "new", by position. */
function startsOf(of: Board) {
  const built = buildProblem(of, { planUnknown: true })
  if ('faults' in built) throw new Error(built.faults.join(' '))
  const ranked = rankSlots(built, 'new')
  if ('faults' in ranked) throw new Error(ranked.faults.join(' '))
  return [...ranked.slots]
    .sort((a, b) => a.position - b.position)
    .map((slot) => [slot.position, slot.startMinute, latestStart(built, 'new', slot)])
}

const atOne = job('mill job', 'mill', { windows: [{ date: MONDAY, from: clock(13), to: clock(13) }] })

// Drives of the two towns: yard to mill 10 min, yard to farm 20, mill to farm 15. Worked out by hand.
describe('the last minute at which a job may begin in a gap', () => {
  it('leaves the drive on to the next visit, and the drive home inside working hours', () => {
    // Before one o'clock: 13:00 − 15 min − 60 min. After it: there from 14:15; 16:00 − 20 min home − 60 min.
    expect(startsOf(board([sheet('A', MONDAY, ['mill job'])], [atOne, job('new', 'farm')]))).toEqual([
      [0, clock(8, 20), clock(11, 45)],
      [1, clock(14, 15), clock(14, 40)],
    ])
  })

  it('grows by no overtime, though the crew may stay longer', () => {
    const long = sheet('A', MONDAY, ['mill job'], { latestEnd: clock(18) })
    expect(startsOf(board([long], [atOne, job('new', 'farm')])).at(-1)).toEqual([1, clock(14, 15), clock(14, 40)])
    // Two hours end at 16:15, home at 16:35: overtime already, and not a minute more of it.
    expect(startsOf(board([long], [atOne, job('new', 'farm', { minutes: 120 })])).at(-1)).toEqual([1, clock(14, 15), clock(14, 15)])
  })

  it('keeps to the hours of the customer', () => {
    const open = job('new', 'farm', { windows: [{ date: MONDAY, from: clock(9), to: clock(10, 30) }] })
    expect(startsOf(board([sheet('A', MONDAY, ['mill job'])], [atOne, open]))).toEqual([[0, clock(9), clock(10, 30)]])
  })
})
