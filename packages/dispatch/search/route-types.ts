import type { Model } from './model.ts'

/** Prices of what no plan may have, per tick of lateness and per unit of load too much; they rise until plans without come up. */
export interface Penalties {
  warp: number
  load: number
}

/**
 * Routes under change: each crew-day a chain from its start node to its end node. `owner` is −1 for a visit left out. `ahead…` describes start…node, `behind…`
 * node…end: duration, time warp (lateness forgiven by turning the clock back), earliest and latest start without more of either (Vidal et al. 2013).
 */
export interface Routes {
  readonly model: Model
  readonly penalties: Penalties
  readonly next: Int32Array
  readonly prev: Int32Array
  readonly pos: Int32Array
  readonly owner: Int32Array
  readonly aheadDur: Int32Array
  readonly aheadWarp: Int32Array
  readonly aheadEarly: Int32Array
  readonly aheadLate: Int32Array
  readonly aheadLoad: Float64Array
  readonly behindDur: Int32Array
  readonly behindWarp: Int32Array
  readonly behindEarly: Int32Array
  readonly behindLate: Int32Array
  readonly count: Int32Array
  readonly warp: Int32Array
  readonly excess: Float64Array
  /** What the route's faults cost at present; when it is walked, also its whole price, and what of that is not drives, lateness, dislikes and sending. */
  readonly fault: Float64Array
  readonly price: Float64Array
  readonly soft: Float64Array
  /** When a route last changed, on a clock of changes. */
  readonly changed: Int32Array
  clock: { now: number }
  readonly walk: WalkState
}

/** How a walk stands after each node: `FIELDS` numbers a node, so that a changed route is walked from its first change only. */
export interface WalkState {
  readonly stored: Float64Array
  /** Crew-days' figures, `DAY` numbers each, and their pauses and rush hours, three numbers each. */
  readonly day: Float64Array
  readonly pauses: Float64Array
  readonly rush: Float64Array
  /** Four numbers a visit: ft³ out and back, lb out and back. */
  readonly loads: Float64Array
  /** Two numbers a visit: by how much it lasts longer than its length in the mean, and its variance. */
  readonly lasts: Float64Array
  /** Three numbers a visit: the crew-day on which it stands (−1: none), when, and the price of another time there. */
  readonly stands: Float64Array
  readonly scratch: Int32Array
  /** Of the last walk. */
  warp: number
  excess: number
  soft: number
}
