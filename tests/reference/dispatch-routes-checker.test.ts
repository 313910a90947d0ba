import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import type { ViolationKind } from '@almanac/dispatch/checker/violation'
import type { RoutePlan } from '@almanac/dispatch/problem/plan'
import type { RoutingProblem } from '@almanac/dispatch/problem/problem'
import { problemFaults } from '@almanac/dispatch/problem/problem-faults'
import { timetable } from '@almanac/dispatch/search/timetable'
import { describe, expect, it } from 'vitest'
import {
  changedPlan,
  changedProblem,
  type Draft,
  given,
  monday,
  mondayCrew,
  plan,
  problem,
  stop,
  tuesday,
} from '../support/hand-made-plan.ts'

const { assign } = Object

describe('the checker', () => {
  it('passes the plan made by hand, and the timetable of its orders is that plan', () => {
    expect(problemFaults(problem)).toEqual([])
    expect(checkPlan(problem, plan)).toEqual([])
    expect(timetable(problem, [[0, 1], [2]])).toEqual({ plan, fits: true })
  })

  const corrupt: [string, ViolationKind, (draft: Draft<RoutePlan>) => unknown][] = [
    ['a day sheet too few', 'shape', (draft) => draft.days.pop()],
    ['a visit there is not', 'shape', (draft) => draft.leftOut.push(9)],
    ['a time that is no number', 'shape', (draft) => assign(stop(draft, 0), { start: Number.NaN })],
    ['a visit forgotten', 'missing', (draft) => draft.leftOut.pop()],
    ['a visit twice', 'twice', (draft) => draft.leftOut.push(0)],
    [
      'a visit that must be planned left out',
      'left-out',
      (draft) =>
        draft.leftOut.push(
          ...monday(draft)
            .visits.splice(1)
            .map(() => 1),
        ),
    ],
    [
      'a promised visit left out',
      'promise',
      (draft) =>
        draft.leftOut.push(
          ...tuesday(draft)
            .visits.splice(0)
            .map(() => 2),
        ),
    ],
    ['a promise moved to another crew', 'promise', (draft) => monday(draft).visits.push(...tuesday(draft).visits.splice(0))],
    ['a promise begun too early', 'promise', (draft) => assign(tuesday(draft).visits[0] as object, { start: 118_799 })],
    ['a start outside the windows', 'window', (draft) => assign(stop(draft, 0), { start: 32_401 })],
    ['leaving before the shift', 'shift', (draft) => assign(monday(draft), { start: 28_799 })],
    ['back too late', 'shift', (draft) => assign(monday(draft), { end: 54_001 })],
    ['a drive too quick', 'drive', (draft) => assign(stop(draft, 1), { arrival: 37_199 })],
    ['a way back too quick', 'drive', (draft) => assign(monday(draft), { end: 52_799 })],
    ['work before the crew is there', 'drive', (draft) => assign(stop(draft, 0), { start: 29_399 })],
    ['work cut short', 'service', (draft) => assign(stop(draft, 0), { end: 36_599 })],
    ['no pause', 'pause', (draft) => monday(draft).pauses.pop()],
    ['a pause too early', 'pause', (draft) => assign(monday(draft), { pauses: [39_599] })],
    ['a pause within work', 'pause', (draft) => assign(monday(draft), { pauses: [42_000] })],
    ['a pause more than there is', 'pause', (draft) => monday(draft).pauses.push(52_300)],
    ['work begun within the pause', 'pause', (draft) => assign(stop(draft, 1), { start: 41_399 })],
    ['a price understated', 'price', (draft) => assign(draft.objective, { overtime: 7199, total: 28_449 })],
    ['a sum that is not', 'price', (draft) => assign(draft.objective, { total: 28_000 })],
    ['a price that is no number', 'price', (draft) => assign(draft.objective, { driving: Number.NaN })],
  ]
  it.each(corrupt)('catches %s', (_, kind, change) => {
    expect(checkPlan(problem, changedPlan(change)).map((violation) => violation.kind)).toContain(kind)
  })

  const otherwise: [string, ViolationKind, (draft: Draft<RoutingProblem>) => unknown][] = [
    ['a skill the crew lacks', 'skill', (draft) => given(draft, 1).skills.push('well water')],
    ['people too few', 'people', (draft) => assign(given(draft, 0), { people: 3 })],
    ['a crew-day not allowed', 'not-allowed', (draft) => assign(given(draft, 0), { allowedCrewDays: [1] })],
    ['a visit before its release', 'release', (draft) => assign(given(draft, 0), { releaseDay: 1 })],
    ['a vehicle too small in volume', 'load', (draft) => assign(mondayCrew(draft).capacity, { ft3: 9.9 })],
    // 300 + 200 lb go out; after the rebed 360 + 200 lb are on board.
    ['a vehicle too weak once the spent resin is on board', 'load', (draft) => assign(mondayCrew(draft).capacity, { lb: 559 })],
    ['a rush hour forgotten', 'drive', (draft) => assign(mondayCrew(draft), { rush: [{ from: 28_000, to: 29_000, factor: 1.5 }] })],
    ['a price of lateness', 'price', (draft) => assign(given(draft, 2), { latePricePerDay: 301 })],
    ['a price of disliking', 'price', (draft) => assign(given(draft, 2), { dislikes: [] })],
    ['a price of leaving out', 'price', (draft) => assign(given(draft, 3), { leaveOutPrice: 1 })],
    ['a price of sending', 'price', (draft) => assign(mondayCrew(draft), { sendPrice: 0 })],
    ['a fair share', 'price', (draft) => assign(mondayCrew(draft), { fairShareTicks: 7201 })],
  ]
  it.each(otherwise)('catches %s', (_, kind, change) => {
    expect(checkPlan(changedProblem(change), plan).map((violation) => violation.kind)).toContain(kind)
  })

  it('says it in a sentence with the numbers', () => {
    const late = checkPlan(
      problem,
      changedPlan((draft) => assign(monday(draft), { end: 54_001 })),
    )
    expect(late[0]?.sentence).toBe('Ann and Bo, Monday is back at 54001, after its latest end at 54000.')
  })
})
