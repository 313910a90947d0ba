import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import { endLikely } from '@almanac/dispatch/checker/end-likely'
import type { PlannedDay } from '@almanac/dispatch/problem/plan'
import type { CrewDay } from '@almanac/dispatch/problem/problem'
import type { Board } from '@almanac/dispatch/propose/board'
import { type Built, buildProblem } from '@almanac/dispatch/propose/build-problem'
import { lag, notBefore } from '@almanac/dispatch/search/lag'
import { timetable } from '@almanac/dispatch/search/timetable'
import { describe, expect, it } from 'vitest'
import { chanceFrom, logNormal } from '../../scripts/bench/day/chance.ts'
import { propose } from '../support/dispatch/proposing.ts'
import { board, job, sheet } from '../support/dispatch/two-towns.ts'

const MONDAY = '2026-04-06'
const TUESDAY = '2026-04-07'
const SPREAD = 0.25

/** A board whose hours past the end that nine of ten days keep cost so much. */
function dayOf(ids: readonly string[], to: number, perLateHour: number, rush: Board['rush'] = []): Built {
  const sheets = [sheet('A', MONDAY, [...ids], { shift: { from: 480, to }, latestEnd: to + 240 })]
  const plain = board(
    sheets,
    ids.map((id, n) => job(id, ['mill', 'farm', 'lake'][n % 3] ?? null, { spread: SPREAD })),
  )
  const built = buildProblem({ ...plain, rush, prices: { ...plain.prices, perLateHour } })
  if ('faults' in built) throw new Error(built.faults.join(' '))
  return built
}

describe('room for visits that take longer', () => {
  it.each([
    // Standard normal: density 0.398942 at 0 and 0.241971 at 1; 0.841345 lie below 1 (Abramowitz and Stegun, table 26.1).
    [0, 0.398942, 0.340845],
    [1, 1.083316, 0.751088],
    [-20, 0, 0],
    [20, 20, 1],
  ])('the greater of a time and a normal moment %d deviations after it, by the tables', (ready, mean, variance) => {
    notBefore(ready, 1)
    expect(lag.mean).toBeCloseTo(mean, 5)
    expect(lag.variance).toBeCloseTo(variance, 5)
  })

  it('a day of one visit, by hand', () => {
    // Mean 60 × e^(0.25²/2) = 61.905 min, deviation 61.905 × √(e^(0.25²) − 1) = 15.721. Each drive of 10 min varies by 1.5; what the first wins is lost:
    // 0.3989 × 1.5 = 0.598 min later, variance 0.3408 × 2.25 = 0.767. Back at 80 + 0.598 + 1.905 = 82.503 with √(0.767 + 247.16 + 2.25) = 15.817: nine of ten by 102.77.
    const { problem, present } = dayOf(['x'], 480 + 100, 3600)
    const { plan } = timetable(problem, present)
    expect(plan.objective.reserve / 60).toBeCloseTo(2.77, 1)
    expect(checkPlan(problem, plan)).toEqual([])
    // It leaves at 9:10; whoever is late leaves at 9:30, and then the 10 min take a fifth more: 2 min later.
    const rushed = dayOf(['x'], 480 + 100, 3600, [{ from: 560, to: 600, factor: 1.2 }])
    const late = timetable(rushed.problem, rushed.present).plan
    expect((late.objective.reserve - plan.objective.reserve) / 60).toBeCloseTo(2, 6)
    expect(checkPlan(rushed.problem, late)).toEqual([])
  })

  it.each([1, 3, 5])('of days of %d visits that end when nine of ten do, one in ten ends late: drawn 4,000 times', (visits) => {
    const ids = Array.from({ length: visits }, (_, n) => `job ${n}`)
    const built = dayOf(ids, 960, 60)
    const day = timetable(built.problem, built.present).plan.days[0] as PlannedDay
    const end = endLikely(built.problem, built.problem.crewDays[0] as CrewDay, day)
    const by = (end?.mean ?? 0) + 1.2816 * Math.sqrt(end?.variance ?? 0)
    const chance = chanceFrom(visits)
    let late = 0
    for (let n = 0; n < 4_000; n++) {
      let [at, free] = [day.start, day.start]
      for (const visit of day.visits) {
        at = Math.max(visit.start, at + (visit.arrival - free) * logNormal(chance, 0.15)) + 3600 * logNormal(chance, SPREAD)
        free = visit.end
      }
      at += (day.end - free) * logNormal(chance, 0.15)
      if (at > by) late++
    }
    // Three deviations of a share of one in ten in 4,000 draws are 1.4 %; the normal distribution in place of the true one costs about as much again.
    expect(late / 4_000).toBeGreaterThan(0.075)
    expect(late / 4_000).toBeLessThan(0.125)
  })

  it('spreads over two days what would fill one, and only where the firm asks for it', () => {
    const jobs = ['a', 'b', 'c', 'd', 'e'].map((id) => job(id, 'mill', { minutes: 80, spread: SPREAD }))
    // 20 min of driving and 5 × 80 min: back at 15:00, an hour's shift before its end at 15:30 with nothing gone wrong.
    const day = (id: string, date: string) => sheet(id, date, [], { shift: { from: 480, to: 930 }, latestEnd: 1020 })
    const plain = board([day('A', MONDAY), day('B', TUESDAY)], jobs)
    const used = (of: typeof plain) => new Set([...propose(of, 40).spots.values()].map((spot) => spot.sheetId)).size
    expect(used(plain)).toBe(1)
    expect(used({ ...plain, prices: { ...plain.prices, perLateHour: 3600 } })).toBe(2)
  })

  it('leaves a day without spread, and one without a price, as they were', () => {
    for (const built of [dayOf(['x', 'y'], 960, 0), dayOf(['x', 'y'], 960, 60)]) {
      const bare = { ...built.problem, crewDays: built.problem.crewDays.map(({ reserve: _, ...crew }) => crew) }
      expect(timetable(built.problem, built.present).plan).toEqual(timetable(bare, built.present).plan)
    }
  })
})
