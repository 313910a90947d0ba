import type { Routes } from './route-types.ts'
import { clearRoutes, refreshRoute } from './routes.ts'
import { relink } from './splice.ts'

/** One plan of the population: its orders, and what diversity is measured by. */
export interface Individual {
  /** Planned visits, route after route; `ends[r]` is where route r ends in it. */
  readonly order: Int32Array
  readonly ends: Int32Array
  /** A visit's neighbours on its route: −1 at an end, −2 when left out. */
  readonly next: Int32Array
  readonly prev: Int32Array
  /** Without and with nothing forbidden priced. */
  readonly price: number
  readonly warp: number
  readonly excess: number
  readonly feasible: boolean
  /** Others of its population, the most alike first. */
  readonly near: { readonly other: Individual; readonly distance: number }[]
  fitness: number
}

/** What is on the routes, copied out. */
export function copyOut(s: Routes): Individual {
  const { visits, days, uniform, row, place, edge, leaveOut } = s.model
  const order = new Int32Array(visits)
  const ends = new Int32Array(days)
  const next = new Int32Array(visits).fill(-2)
  const prev = new Int32Array(visits).fill(-2)
  let k = 0
  let price = 0
  let warp = 0
  let excess = 0
  for (let r = 0; r < days; r++) {
    let last = visits + r
    for (let node = s.next[last] as number; ; node = s.next[node] as number) {
      if (uniform && (node < visits || last < visits)) price += edge[(row[last] as number) + (place[node] as number)] as number
      if (node >= visits) break
      order[k++] = node
      prev[node] = last < visits ? last : -1
      next[node] = (s.next[node] as number) < visits ? (s.next[node] as number) : -1
      last = node
    }
    ends[r] = k
    warp += s.warp[r] as number
    excess += s.excess[r] as number
    if (!uniform) price += (s.price[r] as number) - (s.fault[r] as number)
  }
  for (let v = 0; v < visits; v++) if ((s.owner[v] as number) < 0) price += leaveOut[v] as number
  const feasible = warp === 0 && excess <= 1e-9
  return { order: order.slice(0, k), ends, next, prev, price, warp, excess, feasible, near: [], fitness: 0 }
}

/** Puts a plan onto the routes. */
export function putBack(s: Routes, individual: Individual): void {
  clearRoutes(s)
  for (let r = 0; r < s.model.days; r++) setRoute(s, r, individual, r)
}

/** Fills route `r`, empty at present, as the plan's route `from`; visits already on another route are passed over. */
export function setRoute(s: Routes, r: number, individual: Individual, from: number): void {
  const { visits, days } = s.model
  const begin = from === 0 ? 0 : (individual.ends[from - 1] as number)
  const end = individual.ends[from] as number
  if (begin === end) return
  let count = 0
  for (let i = begin; i < end; i++) {
    const node = individual.order[i] as number
    if ((s.owner[node] as number) < 0) s.walk.scratch[count++] = node
  }
  relink(s, visits + r, s.walk.scratch, count, visits + days + r)
  refreshRoute(s, r)
}

/** Share of visits with another neighbour before or after (broken pairs). */
export function apart(a: Individual, b: Individual): number {
  const { next, prev } = a
  let broken = 0
  for (let v = 0; v < next.length; v++) {
    if (next[v] !== b.next[v] && next[v] !== b.prev[v]) broken++
    if (prev[v] === -1 && b.prev[v] !== -1 && b.next[v] !== -1) broken++
  }
  return next.length === 0 ? 0 : broken / next.length
}
