import type { Span } from '@almanac/dispatch/problem/problem'

/** One person's part of a visit. `skill` null: anyone can. */
export interface Need {
  readonly skill: string | null
  readonly ticks: number
}

/** How the parts of a visit hang together: all begin at the same moment, or the second begins `least` to `most` ticks after the first began. */
export type Link = { readonly kind: 'together' } | { readonly kind: 'after'; readonly least: number; readonly most: number }

/** A visit done by one person, or by several different people whose times are linked. */
export interface LinkedVisit {
  readonly id: string
  /** Row of the travel tables; null: wherever the person is then (a break). */
  readonly place: number | null
  /** When each part may begin. */
  readonly windows: readonly Span[]
  /** One, or several with a `link`; `after` takes exactly two. */
  readonly needs: readonly Need[]
  readonly link?: Link
  /** Price of leaving it out. Absent: it must be planned. */
  readonly leaveOutPrice?: number
}

/** One person on one day. Several days: one entry a person and day, ticks absolute over the days. */
export interface LinkedPerson {
  readonly id: string
  readonly skills: readonly string[]
  readonly startPlace: number
  readonly endPlace: number
  readonly shift: Span
  /** Back by then, without exception; absent: any time. */
  readonly latestEnd?: number
  /** Price of one tick past `shift.to`. */
  readonly overtimePrice: number
}

/**
 * Visits whose people the planner chooses, so that it forms the crews. Ticks are any one unit, fractions allowed. `lateness`: 'priced' lets a part begin after
 * its last window at `lateTick` a tick and `mostLate` a tick of the largest; 'refused' does not.
 */
export interface LinkedProblem {
  readonly visits: readonly LinkedVisit[]
  readonly people: readonly LinkedPerson[]
  readonly places: number
  /** Row-major `places` × `places`, from the row's place to the column's. */
  readonly durations: ArrayLike<number>
  readonly distances: ArrayLike<number>
  readonly prices: { readonly distance: number; readonly lateTick: number; readonly mostLate: number }
  readonly lateness: 'priced' | 'refused'
}

/** One part of a visit in a person's order; `visit`, `need` and the person are indexes. */
export interface LinkedPart {
  readonly visit: number
  readonly need: number
  readonly start: number
  readonly end: number
}

/** Each person's parts in order, in the order of `LinkedProblem.people`; `total` is the sum of the priced parts. */
export interface LinkedPlan {
  readonly people: readonly (readonly LinkedPart[])[]
  readonly leftOut: readonly number[]
  readonly distance: number
  readonly totalLate: number
  readonly mostLate: number
  readonly overtimePrice: number
  readonly leftOutPrice: number
  readonly total: number
}
