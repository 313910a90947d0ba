/** A visit in its place on a crew-day. `visit` is an index into `Problem.visits`; times are ticks; `start` is when the work begins. */
export interface PlannedVisit {
  readonly visit: number
  readonly arrival: number
  readonly start: number
  readonly end: number
}

/** One crew-day of a plan: `start` is when it leaves its first place, `end` when it reaches its last. */
export interface PlannedDay {
  readonly start: number
  readonly end: number
  readonly visits: readonly PlannedVisit[]
  /** Beginnings of the pauses taken, in the order of `CrewDay.pauses`; a pause not owed is missing at the end of the list. */
  readonly pauses: readonly number[]
}

/** What a plan costs, part by part; `total` is their sum. */
export interface Objective {
  readonly driving: number
  readonly overtime: number
  /** Of days that would end late too often. */
  readonly reserve: number
  readonly lateness: number
  readonly fairness: number
  readonly preferences: number
  readonly sending: number
  readonly leftOut: number
  readonly total: number
}

/** A plan for a problem: one entry a crew-day, in the problem's order. */
export interface RoutePlan {
  readonly days: readonly PlannedDay[]
  /** Visits not planned, as indexes in rising order: optional ones, and such as must be planned but fit nowhere. */
  readonly leftOut: readonly number[]
  readonly objective: Objective
}

/** The order of visits alone: one list of visit indexes a crew-day. What a search starts from. */
export type Sequences = readonly (readonly number[])[]
