import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import type { Board } from '@almanac/dispatch/propose/board'
import { type Built, buildProblem } from '@almanac/dispatch/propose/build-problem'
import { timetable } from '@almanac/dispatch/search/timetable'
import { explainNoFit } from '@almanac/dispatch/slots/explain-no-fit'
import { rankSlots } from '@almanac/dispatch/slots/rank-slots'
import type { Slot } from '@almanac/dispatch/slots/slot'
import { describe, expect, it } from 'vitest'
import { placesForVisit, withVisit } from '../../scripts/bench/dispatch/insert-visit.ts'
import { inventedBoard } from '../support/dispatch/invented-board.ts'
import { board, job, sheet } from '../support/dispatch/two-towns.ts'

const MONDAY = '2026-04-06'
const TUESDAY = '2026-04-07'

function built(of: Board): Built {
  const result = buildProblem(of, { planUnknown: true })
  if ('faults' in result) throw new Error(result.faults.join(' '))
  return result
}

function slotsOf(of: Board | Built, jobId: string, how = {}): Slot[] {
  const result = rankSlots(of, jobId, how)
  if ('faults' in result) throw new Error(result.faults.join(' '))
  return result.slots
}

describe('the slots of one job', () => {
  it('are worked out by hand for one crew, two towns', () => {
    // Yard 8:00 → mill 8:10–9:10 → yard 9:20. Farm first: 8:20–9:20, mill 9:35–10:35, yard 10:45: 45 − 20 = 25 min more. Mill first: farm 9:25–10:25, yard 10:45: as much.
    const one = board([sheet('A', MONDAY, ['mill job'])], [job('mill job', 'mill'), job('new', 'farm')])
    const slots = slotsOf(one, 'new')
    expect(slots.map((slot) => [slot.position, slot.startMinute, slot.endMinute, slot.addedDriveMinutes, slot.price])).toEqual([
      [0, 500, 560, 25, 50],
      [1, 565, 625, 25, 50],
    ])
    expect(slots[0]?.sentence).toBe('Monday, April 6, 8:20 – 9:20\u00a0AM, Crew A: 25 min more driving.')
  })

  it('count waiting, overtime, days after due and a full vehicle', () => {
    const late = job('late', 'mill', {
      windows: [{ date: TUESDAY, from: 930, to: 935 }],
      due: MONDAY,
      riskPerDay: 700,
      out: { ft3: 19, lb: 0 },
      minutes: 90,
    })
    const longDay = { latestEnd: 1080 }
    const [slot] = slotsOf(board([sheet('A', MONDAY, [], longDay), sheet('B', TUESDAY, [], longDay)], [late]), 'late')
    // 15:30 until 17:00, back at 17:10; the shift ends at 16:00. Arrived 8:10, so 7 h 20 min waiting.
    expect(slot).toMatchObject({
      sheetId: 'B',
      startMinute: 930,
      addedOvertimeMinutes: 70,
      addedWaitMinutes: 440,
      lateDays: 1,
      windowSlackMinutes: 5,
    })
    // 20 min driving at 2, 70 min of overtime of two people at 2 each, one day at 700.
    expect(slot?.parts).toEqual({ driving: 40, overtime: 280, reserve: 0, lateness: 700, sending: 0, moving: 0 })
    expect(slot?.sentence).toBe(
      'Tuesday, April 7, 3:30 – 5:00\u00a0PM, Crew B: 20 min more driving, 1 h 10 min overtime, 7 h 20 min waiting, 1 day after it is due, close to the end of the window and vehicle 95% full.',
    )
  })

  it('price the time in hand at a day’s end like overtime, and tell it apart', () => {
    const late = job('late', 'mill', { windows: [{ date: TUESDAY, from: 930, to: 935 }], minutes: 90 })
    const [slot] = slotsOf(board([sheet('B', TUESDAY, [], { latestEnd: 1080, inHandMinutes: 30 })], [late]), 'late')
    // Back at 17:10, as above; the shift ends at 16:00, and its last half hour is in hand: 100 min of two people at 2 each.
    expect(slot).toMatchObject({ addedOvertimeMinutes: 70, addedInHandMinutes: 30, parts: { overtime: 400 } })
  })

  it('count what is brought back: new resin may go out before spent resin comes in, not after', () => {
    const back = job('back', 'mill', { back: { ft3: 15, lb: 0 } })
    const out = job('out', 'farm', { out: { ft3: 15, lb: 0 } })
    // The vehicle holds 20 ft³. Farm first: 15 out, then 15 back. Mill first: 15 + 15 on the way to the farm.
    const slots = slotsOf(board([sheet('A', MONDAY, ['back'])], [back, out]), 'out')
    expect(slots.map((slot) => [slot.position, slot.fullest])).toEqual([[0, 0.75]])
  })

  it('agree with the planner on where a visit fits and what it adds, and pass the checker', () => {
    let compared = 0
    for (let seed = 1; seed <= 30; seed++) {
      const plain = inventedBoard(seed, { crews: 4, days: 3, perSheet: 4, waiting: 6 })
      const all = built({ ...plain, sheets: plain.sheets.map((one) => ({ ...one, capacity: { ft3: 12, lb: 800 } })) })
      const before = timetable(all.problem, all.present)
      if (checkPlan(all.problem, before.plan).length > 0) continue
      for (const waiting of all.board.jobs.slice(-6)) {
        const v = all.visitOf.get(waiting.id) as number
        const slots = slotsOf(all, waiting.id)
        const places = placesForVisit(all.problem, all.present, v)
        const key = (sheetIndex: number, position: number): string => `${sheetIndex}/${position}`
        const ours = new Map(slots.map((slot) => [key(all.sheetOf.get(slot.sheetId) as number, slot.position), slot.price]))
        expect(new Set(ours.keys()), `seed ${seed}`).toEqual(new Set(places.map((place) => key(place.crewDay, place.position))))
        for (const place of places) {
          const leaveOut = all.problem.visits[v]?.leaveOutPrice ?? 0
          const price = ours.get(key(place.crewDay, place.position)) as number
          const plan = timetable(all.problem, withVisit(all.present, v, place)).plan
          expect(price, `seed ${seed}`).toBeCloseTo(plan.objective.total - before.plan.objective.total + leaveOut, 4)
          expect(checkPlan(all.problem, plan)).toEqual([])
          compared++
        }
      }
    }
    expect(compared).toBeGreaterThan(500)
  })

  it('are none exactly when there is a reason', () => {
    let without = 0
    for (let seed = 20; seed < 40; seed++) {
      const all = built(inventedBoard(seed, { crews: 2, days: 2, perSheet: 6, waiting: 8 }))
      for (const waiting of all.board.jobs.slice(-8)) {
        const reason = explainNoFit(all, waiting.id)
        expect(reason === null, `seed ${seed} ${waiting.id}: ${reason}`).toBe(slotsOf(all, waiting.id).length > 0)
        if (reason === null) continue
        without++
        expect(reason).toMatch(/^[^.]*[^ ]\.$/)
        expect(reason).not.toMatch(/NaN|undefined|null|Infinity/)
      }
    }
    expect(without).toBeGreaterThan(5)
  })

  it('do not shut a sheet that comes late already, and make nothing on it later', () => {
    // y's window ends at 8:20, but the crew is there at 9:25 only; back in the yard at 10:45.
    const y = job('y', 'farm', { windows: [{ date: MONDAY, from: 480, to: 500 }] })
    const late = board([sheet('A', MONDAY, ['x', 'y'])], [job('x', 'mill'), y, job('new', 'lake')])
    expect(slotsOf(late, 'new').map((slot) => [slot.position, slot.startMinute])).toEqual([[2, 637]])
    const full = board(
      [sheet('A', MONDAY, ['x', 'y'], { shift: { from: 480, to: 600 }, latestEnd: 600 })],
      [job('x', 'mill'), y, job('new', 'lake')],
    )
    expect(slotsOf(full, 'new')).toEqual([])
    expect(explainNoFit(full, 'new', { sheetId: 'A' })).toMatch(/^Crew A has no 1 h free for new .*, and comes late already; /)
  })

  it('say that a drive is unknown, and give no number for it', () => {
    const lost = board([sheet('A', MONDAY, [])], [job('lost', null)])
    const result = rankSlots(lost, 'lost')
    if ('faults' in result) throw new Error(result.faults.join(' '))
    expect(result.slots[0]).toMatchObject({ addedDriveMinutes: null, addedMiles: null })
    expect(result.slots[0]?.sentence).toMatch(/drive unknown/)
    expect(result.notes).toEqual(['Drive to lost unknown: set its pin on the map, then it can be planned.'])
  })

  it('refuse a board that contradicts itself with a sentence', () => {
    const twice = board([sheet('A', MONDAY, ['x']), sheet('B', MONDAY, ['x'])], [job('x', 'mill')])
    expect(rankSlots(twice, 'x')).toEqual({ faults: ['A job is on two sheets: Crew A and Crew B.'] })
    expect(rankSlots(board([sheet('A', MONDAY, [])], []), 'gone')).toEqual({ faults: ['That job is outside the days planned.'] })
    const never = board([sheet('A', MONDAY, [])], [job('x', 'mill', { due: '2026-02-31' })])
    expect(rankSlots(never, 'x')).toEqual({ faults: [expect.stringContaining('"2026-02-31" is no calendar day.')] })
  })
})

describe('why a job cannot be placed', () => {
  const full = ['a', 'b', 'c', 'd', 'e', 'f', 'g']
  const busy = full.map((id) => job(id, 'mill'))

  it('names the crew of two that is not free, and what would free it', () => {
    const bakery = job('Mill bakery', 'mill', { people: 2, minutes: 180 })
    const reason = explainNoFit(board([sheet('A', MONDAY, full), sheet('B', MONDAY, [], { people: 1 })], [...busy, bakery]), 'Mill bakery')
    expect(reason).toBe(
      'No crew of two that can do Mill bakery is free for 3 h in its windows on Monday, April 6; adding a person to Crew B on Monday, April 6 would free 8:10\u00a0AM, or letting Crew A work until 6:20\u00a0PM on Monday, April 6 would make room.',
    )
  })

  it('tells the truth about what would free it', () => {
    const big = job('big', 'farm', { people: 2, minutes: 120 })
    const sheets = [sheet('A', MONDAY, full, { latestEnd: 960 }), sheet('B', TUESDAY, [], { people: 1 })]
    expect(explainNoFit(board(sheets, [...busy, big]), 'big')).toContain(
      'adding a person to Crew B on Tuesday, April 7 would free 8:20\u00a0AM',
    )
    const [slot] = slotsOf(board([sheets[0] as (typeof sheets)[number], sheet('B', TUESDAY, [])], [...busy, big]), 'big')
    expect(slot?.startMinute).toBe(500)
    const short = job('short', 'mill', { minutes: 60 })
    expect(explainNoFit(board([sheet('A', MONDAY, full, { latestEnd: 960 })], [...busy, short]), 'short')).toContain(
      'moving a off Crew A on Monday, April 6 would free 8:10\u00a0AM',
    )
    expect(slotsOf(board([sheet('A', MONDAY, full.slice(1), { latestEnd: 960 })], [...busy, short]), 'short').length).toBeGreaterThan(0)
  })

  it.each([
    ['skill', job('x', 'mill', { skills: ['gas'] }), /No crew can do gas, which x needs, on Monday.*someone who can do gas/],
    [
      'window',
      job('x', 'mill', { windows: [{ date: MONDAY, from: 1100, to: 1200 }] }),
      /The windows of x meet the hours of no crew.*8:10.*if the customer agrees/,
    ],
    ['load', job('x', 'mill', { out: { ft3: 30, lb: 0 } }), /No vehicle .* carry 30 ft³ for x.*larger vehicle/],
    ['early', job('x', 'mill', { earliest: TUESDAY }), /x may not be done before Tuesday, April 7; having it ready by Monday/],
    ['people', job('x', 'mill', { people: 3 }), /No crew of 3, which x needs, is out on Monday.*adding a person/],
  ])('names the %s', (_, one, words) => {
    expect(explainNoFit(board([sheet('A', MONDAY, [])], [one]), 'x')).toMatch(words)
  })

  it('answers for a day without sheets, and nothing where there is a place', () => {
    const one = board([sheet('A', MONDAY, [])], [job('x', 'mill')])
    expect(explainNoFit(one, 'x', { date: TUESDAY })).toBe('No crew has a day sheet on Tuesday, April 7: open one, or choose another day.')
    expect(explainNoFit(one, 'x')).toBeNull()
  })
})

describe('days on which the clocks change (US: second Sunday of March and first of November at 2:00)', () => {
  const night = { shift: { from: 60, to: 300 }, latestEnd: 300 }
  const spring = { date: '2026-03-08', minutesInDay: 1380, clockChange: { wallMinute: 120, byMinutes: 60 } }
  const autumn = { date: '2026-11-01', minutesInDay: 1500, clockChange: { wallMinute: 120, byMinutes: -60 } }
  const on = (day: typeof spring, minutes: number, changes = {}): Slot[] =>
    slotsOf(board([sheet('A', day.date, [], { ...night, ...changes })], [job('x', 'mill', { minutes })], { days: [day] }), 'x')

  it('a night shift from 1:00 to 5:00 has three hours in spring and five in autumn', () => {
    // 10 min there and back: 160 of 180 minutes, 280 of 300.
    expect(on(spring, 160)).toHaveLength(1)
    expect(on(spring, 161)).toHaveLength(0)
    expect(on(autumn, 280)).toHaveLength(1)
    expect(on(autumn, 281)).toHaveLength(0)
  })
  it('times are what the clock shows', () => {
    // 1:10 and 100 minutes: the clock jumps from 2:00 to 3:00, so 3:50; in autumn it shows 1:00 again at 2:00, so 1:50.
    expect(on(spring, 100)[0]).toMatchObject({ startMinute: 70, endMinute: 230 })
    expect(on(autumn, 100)[0]).toMatchObject({ startMinute: 70, endMinute: 110 })
    expect(on(spring, 60, { shift: { from: 480, to: 960 }, latestEnd: 960 })[0]).toMatchObject({ startMinute: 490, endMinute: 550 })
    expect(on(autumn, 60, { shift: { from: 480, to: 960 }, latestEnd: 960 })[0]).toMatchObject({ startMinute: 490, endMinute: 550 })
  })
  it('a day of another length without a change that explains it is refused', () => {
    const odd = board([sheet('A', '2026-03-08', [])], [job('x', 'mill')], { days: [{ date: '2026-03-08', minutesInDay: 1380 }] })
    expect(rankSlots(odd, 'x')).toMatchObject({ faults: [expect.stringMatching(/1380 minutes/)] })
  })
})
