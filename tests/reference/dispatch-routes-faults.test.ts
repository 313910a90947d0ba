import type { RoutingProblem } from '@almanac/dispatch/problem/problem'
import { problemFaults } from '@almanac/dispatch/problem/problem-faults'
import { startPlanning } from '@almanac/dispatch/search/planner'
import { describe, expect, it } from 'vitest'
import { changedProblem, type Draft, given, problem, table } from '../support/hand-made-plan.ts'

const { assign } = Object

describe('a problem that cannot be planned with', () => {
  const bad: [string, RegExp, (draft: Draft<RoutingProblem>) => unknown][] = [
    ['a table too short', /24 entries; 5 places need 25/, (draft) => assign(draft, { durations: table.slice(1) })],
    [
      'a distance that is no number',
      /distances holds NaN from place 0 to 1/,
      (draft) => assign(draft, { distances: table.with(1, Number.NaN) }),
    ],
    ['a place that is not there', /rebed: place 7/, (draft) => assign(given(draft, 0), { place: 7 })],
    ['a window turned round', /rebed: a window/, (draft) => assign(given(draft, 0), { windows: [{ from: 5, to: 4 }] })],
    [
      'a promise to nobody',
      /promised: its promise/,
      (draft) => assign(given(draft, 2), { promised: { crewDay: 4, start: { from: 0, to: 1 } } }),
    ],
    ['work of half a tick', /rebed: its work takes 0.5/, (draft) => assign(given(draft, 0), { serviceTicks: 0.5 })],
    ['a load below 0', /rebed: a load/, (draft) => assign(given(draft, 0).out, { lb: -1 })],
  ]
  it.each(bad)('%s is named', (_, sentence, change) => {
    expect(problemFaults(changedProblem(change)).join('\n')).toMatch(sentence)
  })

  it('nobody to send, or nothing to do, is a plan all the same', () => {
    const nobody = startPlanning({ ...problem, crewDays: [], visits: problem.visits.slice(3) }, { seed: 1 })
    expect(nobody.improve(5)).toBe(0)
    expect(nobody.best()).toMatchObject({ days: [], leftOut: [0], objective: { total: 5000 } })
    const idle = startPlanning({ ...problem, visits: [] }, { seed: 1 })
    expect(idle.best().objective.total).toBe(0)
  })

  it('more than must be done than fits: as much as fits, the promised visit among it', () => {
    const crowded = {
      ...problem,
      visits: [...problem.visits, ...Array.from({ length: 8 }, (_, i) => ({ ...problem.visits[1], id: `more ${i}` }))],
    }
    const planner = startPlanning(crowded as RoutingProblem, { seed: 1 })
    planner.improve(30)
    const { days, leftOut } = planner.best()
    expect(leftOut).not.toContain(2)
    expect(days[0]?.visits.length).toBeGreaterThan(0)
    expect(days.flatMap((day) => day.visits).length + leftOut.length).toBe(12)
  })
})
