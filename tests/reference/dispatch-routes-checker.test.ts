import { checkPlan } from '@almanac/dispatch/checker/check-plan'
import type { ViolationKind } from '@almanac/dispatch/checker/violation'
import type { Plan } from '@almanac/dispatch/problem/plan'
import type { CrewDay, Problem, Visit } from '@almanac/dispatch/problem/problem'
import { problemFaults } from '@almanac/dispatch/problem/problem-faults'
import { startPlanning } from '@almanac/dispatch/search/planner'
import { timetable } from '@almanac/dispatch/search/timetable'
import { describe, expect, it } from 'vitest'

// A day of two and a morning of one, worked out by hand: ten minutes and ten units of distance between any two places.
const nothing = { ft3: 0, lb: 0 }
const visit = (id: string, place: number, serviceTicks: number, more: Partial<Visit>): Visit => {
  return { id, place, serviceTicks, windows: [{ from: 28_800, to: 50_000 }], out: nothing, back: nothing, skills: [], people: 1, ...more }
}
const crew = (id: string, day: number, more: Partial<CrewDay>): CrewDay => ({
  id,
  day,
  startPlace: 0,
  endPlace: 0,
  shift: { from: 28_800, to: 50_400 },
  latestEnd: 54_000,
  pauses: [{ start: { from: 39_600, to: 46_800 }, ticks: 1800 }],
  capacity: { ft3: 10, lb: 600 },
  skills: ['brass valve'],
  people: 2,
  distancePrice: 2,
  drivePrice: 1,
  overtimePrice: 3,
  sendPrice: 100,
  fairShareTicks: 7200,
  unfairPrice: 1,
  ...more,
})
const tomorrow = { shift: { from: 115_200, to: 136_800 }, latestEnd: 140_400, pauses: [], people: 1, fairShareTicks: undefined }
const table = Array.from({ length: 25 }, (_, i) => (i % 6 === 0 ? 0 : 1))
const problem: Problem = {
  places: 5,
  durations: table.map((n) => 600 * n),
  distances: table.map((n) => 10 * n),
  visits: [
    visit('rebed', 1, 7200, {
      windows: [{ from: 28_800, to: 32_400 }],
      out: { ft3: 6, lb: 300 },
      back: { ft3: 6, lb: 360 },
      skills: ['brass valve'],
      people: 2,
    }),
    visit('long repair', 2, 10_800, { out: { ft3: 4, lb: 200 } }),
    visit('promised', 3, 1800, {
      promised: { crewDay: 1, start: { from: 118_800, to: 122_400 } },
      dueDay: 0,
      latePricePerDay: 300,
      dislikes: [{ crewDay: 1, price: 50 }],
    }),
    visit('may wait', 4, 3600, { leaveOutPrice: 5000 }),
  ],
  crewDays: [crew('Ann and Bo, Monday', 0, {}), crew('Cy, Tuesday', 1, tomorrow)],
}
const plan: Plan = {
  days: [
    {
      start: 28_800,
      visits: [
        { visit: 0, arrival: 29_400, start: 29_400, end: 36_600 },
        // The repair would last past the latest beginning of the pause: the pause comes first.
        { visit: 1, arrival: 37_200, start: 41_400, end: 52_200 },
      ],
      pauses: [39_600],
      end: 52_800,
    },
    { start: 115_200, visits: [{ visit: 2, arrival: 115_800, start: 118_800, end: 120_600 }], pauses: [], end: 121_200 },
  ],
  leftOut: [3],
  // Driving 5 × (10 × 2 + 600); overtime 2400 × 3; busy 3 × 600 + 7200 + 10 800, less the share of 7200.
  objective: {
    driving: 3100,
    overtime: 7200,
    lateness: 300,
    fairness: 12_600,
    preferences: 50,
    sending: 200,
    leftOut: 5000,
    total: 28_450,
  },
}

type Draft<T> = T extends object ? { -readonly [K in keyof T]: Draft<T[K]> } : T
const changedPlan = (change: (draft: Draft<Plan>) => void): Plan => {
  const draft = structuredClone(plan) as Draft<Plan>
  change(draft)
  return draft
}
const changedProblem = (change: (draft: Draft<Problem>) => void): Problem => {
  const draft = structuredClone(problem) as Draft<Problem>
  change(draft)
  return draft
}
type DraftDay = Draft<Plan>['days'][number]
type DraftVisit = DraftDay['visits'][number]
const monday = (draft: Draft<Plan>) => draft.days[0] as DraftDay
const stop = (draft: Draft<Plan>, i: number) => monday(draft).visits[i] as DraftVisit
const given = (draft: Draft<Problem>, v: number) => draft.visits[v] as Draft<Visit>
const mondayCrew = (draft: Draft<Problem>) => draft.crewDays[0] as Draft<CrewDay>

describe('the checker', () => {
  it('passes the plan made by hand, and the timetable of its orders is that plan', () => {
    expect(problemFaults(problem)).toEqual([])
    expect(checkPlan(problem, plan)).toEqual([])
    expect(timetable(problem, [[0, 1], [2]])).toEqual({ plan, fits: true })
  })

  const corrupt: [string, ViolationKind, (draft: Draft<Plan>) => void][] = [
    ['a day sheet too few', 'shape', (draft) => draft.days.pop()],
    ['a visit there is not', 'shape', (draft) => draft.leftOut.push(9)],
    [
      'a time that is no number',
      'shape',
      (draft) => {
        stop(draft, 0).start = Number.NaN
      },
    ],
    [
      'a visit forgotten',
      'missing',
      (draft) => {
        draft.leftOut = []
      },
    ],
    ['a visit twice', 'twice', (draft) => draft.leftOut.push(0)],
    [
      'a visit that must be planned left out',
      'left-out',
      (draft) => {
        monday(draft).visits.splice(1)
        draft.leftOut.push(1)
      },
    ],
    [
      'a promised visit left out',
      'promise',
      (draft) => {
        ;(draft.days[1] as DraftDay).visits = []
        draft.leftOut.push(2)
      },
    ],
    [
      'a promise moved to another crew',
      'promise',
      (draft) => {
        monday(draft).visits.push(...(draft.days[1] as DraftDay).visits.splice(0))
      },
    ],
    [
      'a promise begun too early',
      'promise',
      (draft) => {
        ;((draft.days[1] as DraftDay).visits[0] as DraftVisit).start = 118_799
      },
    ],
    [
      'a start outside the windows',
      'window',
      (draft) => {
        stop(draft, 0).start = 32_401
      },
    ],
    [
      'leaving before the shift',
      'shift',
      (draft) => {
        monday(draft).start = 28_799
      },
    ],
    [
      'back too late',
      'shift',
      (draft) => {
        monday(draft).end = 54_001
      },
    ],
    [
      'a drive too quick',
      'drive',
      (draft) => {
        stop(draft, 1).arrival = 37_199
      },
    ],
    [
      'a way back too quick',
      'drive',
      (draft) => {
        monday(draft).end = 52_799
      },
    ],
    [
      'work before the crew is there',
      'drive',
      (draft) => {
        stop(draft, 0).start = 29_399
      },
    ],
    [
      'work cut short',
      'service',
      (draft) => {
        stop(draft, 0).end = 36_599
      },
    ],
    [
      'no pause',
      'pause',
      (draft) => {
        monday(draft).pauses = []
      },
    ],
    [
      'a pause too early',
      'pause',
      (draft) => {
        monday(draft).pauses = [39_599]
      },
    ],
    [
      'a pause within work',
      'pause',
      (draft) => {
        monday(draft).pauses = [42_000]
      },
    ],
    ['a pause more than there is', 'pause', (draft) => monday(draft).pauses.push(52_300)],
    [
      'work begun within the pause',
      'pause',
      (draft) => {
        stop(draft, 1).start = 41_399
      },
    ],
    [
      'a price understated',
      'price',
      (draft) => {
        draft.objective.overtime = 7199
        draft.objective.total = 28_449
      },
    ],
    [
      'a sum that is not',
      'price',
      (draft) => {
        draft.objective.total = 28_000
      },
    ],
    [
      'a price that is no number',
      'price',
      (draft) => {
        draft.objective.driving = Number.NaN
      },
    ],
  ]
  it.each(corrupt)('catches %s', (_, kind, change) => {
    expect(checkPlan(problem, changedPlan(change)).map((violation) => violation.kind)).toContain(kind)
  })

  const otherwise: [string, ViolationKind, (draft: Draft<Problem>) => void][] = [
    ['a skill the crew lacks', 'skill', (draft) => given(draft, 1).skills.push('well water')],
    [
      'people too few',
      'people',
      (draft) => {
        given(draft, 0).people = 3
      },
    ],
    [
      'a crew-day not allowed',
      'not-allowed',
      (draft) => {
        given(draft, 0).allowedCrewDays = [1]
      },
    ],
    [
      'a visit before its release',
      'release',
      (draft) => {
        given(draft, 0).releaseDay = 1
      },
    ],
    [
      'a vehicle too small in volume',
      'load',
      (draft) => {
        mondayCrew(draft).capacity.ft3 = 9.9
      },
    ],
    // 300 + 200 lb go out; after the rebed 360 + 200 lb are on board.
    [
      'a vehicle too weak once the spent resin is on board',
      'load',
      (draft) => {
        mondayCrew(draft).capacity.lb = 559
      },
    ],
    [
      'a rush hour forgotten',
      'drive',
      (draft) => {
        mondayCrew(draft).rush = [{ from: 28_000, to: 29_000, factor: 1.5 }]
      },
    ],
    [
      'a price of lateness',
      'price',
      (draft) => {
        given(draft, 2).latePricePerDay = 301
      },
    ],
    [
      'a price of disliking',
      'price',
      (draft) => {
        given(draft, 2).dislikes = []
      },
    ],
    [
      'a price of leaving out',
      'price',
      (draft) => {
        given(draft, 3).leaveOutPrice = 1
      },
    ],
    [
      'a price of sending',
      'price',
      (draft) => {
        mondayCrew(draft).sendPrice = 0
      },
    ],
    [
      'a fair share',
      'price',
      (draft) => {
        mondayCrew(draft).fairShareTicks = 7201
      },
    ],
  ]
  it.each(otherwise)('catches %s', (_, kind, change) => {
    expect(checkPlan(changedProblem(change), plan).map((violation) => violation.kind)).toContain(kind)
  })

  it('says it in a sentence with the numbers', () => {
    const late = checkPlan(
      problem,
      changedPlan((draft) => {
        monday(draft).end = 54_001
      }),
    )
    expect(late[0]?.sentence).toBe('Ann and Bo, Monday is back at 54001, after its latest end at 54000.')
  })
})

describe('a problem that cannot be planned with', () => {
  const bad: [string, RegExp, (draft: Draft<Problem>) => void][] = [
    [
      'a table too short',
      /24 entries; 5 places need 25/,
      (draft) => {
        draft.durations = table.slice(1)
      },
    ],
    [
      'a distance that is no number',
      /distances holds NaN from place 0 to 1/,
      (draft) => {
        draft.distances = table.map((n, i) => (i === 1 ? Number.NaN : n))
      },
    ],
    [
      'a place that is not there',
      /rebed: place 7/,
      (draft) => {
        given(draft, 0).place = 7
      },
    ],
    [
      'a window turned round',
      /rebed: a window/,
      (draft) => {
        given(draft, 0).windows = [{ from: 5, to: 4 }]
      },
    ],
    [
      'a promise to nobody',
      /promised: its promise/,
      (draft) => {
        given(draft, 2).promised = { crewDay: 4, start: { from: 0, to: 1 } }
      },
    ],
    [
      'work of half a tick',
      /rebed: its work takes 0.5/,
      (draft) => {
        given(draft, 0).serviceTicks = 0.5
      },
    ],
    [
      'a load below 0',
      /rebed: a load/,
      (draft) => {
        given(draft, 0).out.lb = -1
      },
    ],
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
})
