import type { RoutePlan } from '@almanac/dispatch/problem/plan'
import type { CrewDay, RoutedVisit, RoutingProblem } from '@almanac/dispatch/problem/problem'

// A day of two and a morning of one, worked out by hand: ten minutes and ten units of distance between any two places.
const nothing = { ft3: 0, lb: 0 }
const visit = (id: string, place: number, serviceTicks: number, more: Partial<RoutedVisit>): RoutedVisit => {
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
export const table: readonly number[] = Array.from({ length: 25 }, (_, i) => (i % 6 === 0 ? 0 : 1))
/** Worked out by hand: expected values for the timetable and the checker. */
export const problem: RoutingProblem = {
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
export const plan: RoutePlan = {
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
    reserve: 0,
    lateness: 300,
    fairness: 12_600,
    preferences: 50,
    sending: 200,
    leftOut: 5000,
    total: 28_450,
  },
}

export type Draft<T> = T extends object ? { -readonly [K in keyof T]: Draft<T[K]> } : T
export const changedPlan = (change: (draft: Draft<RoutePlan>) => unknown): RoutePlan => {
  const draft = structuredClone(plan) as Draft<RoutePlan>
  change(draft)
  return draft
}
export const changedProblem = (change: (draft: Draft<RoutingProblem>) => unknown): RoutingProblem => {
  const draft = structuredClone(problem) as Draft<RoutingProblem>
  change(draft)
  return draft
}
type DraftDay = Draft<RoutePlan>['days'][number]
type DraftVisit = DraftDay['visits'][number]
export const tuesday = (draft: Draft<RoutePlan>) => draft.days[1] as DraftDay
export const monday = (draft: Draft<RoutePlan>) => draft.days[0] as DraftDay
export const stop = (draft: Draft<RoutePlan>, i: number) => monday(draft).visits[i] as DraftVisit
export const given = (draft: Draft<RoutingProblem>, v: number) => draft.visits[v] as Draft<RoutedVisit>
export const mondayCrew = (draft: Draft<RoutingProblem>) => draft.crewDays[0] as Draft<CrewDay>
