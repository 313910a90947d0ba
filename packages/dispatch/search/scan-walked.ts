import type { Neighbours } from './neighbours.ts'
import { type Routes, refreshRoute } from './routes.ts'
import { relink, swapTails } from './splice.ts'
import { walkPrice } from './walk.ts'

const EPS = 1e-6
const none = new Int32Array(0)
const intoU = new Int32Array(3)
const intoV = new Int32Array(3)
let along = new Int32Array(256)

/** The moves of visit `u` with its neighbours on crew-days that differ: each changed route is walked. Makes the first move that gains and says so. */
export function scanWalked(s: Routes, u: number, neighbours: Neighbours, tested: number): boolean {
  const { next, prev, owner, changed, price } = s
  const { visits } = s.model
  const { width, list } = neighbours
  const ru = owner[u] as number
  const before = prev[u] as number
  const recentU = (changed[ru] as number) > tested
  const x = next[u] as number
  const xx = x < visits ? (next[x] as number) : -1
  const without1 = walkPrice(s, ru, before, none, 0, x)
  const without2 = xx >= 0 ? walkPrice(s, ru, before, none, 0, xx) : 0
  const held = price[ru] as number
  for (let i = 0; i < width; i++) {
    const v = list[u * width + i] as number
    const rv = owner[v] as number
    if (rv < 0 || (!recentU && (changed[rv] as number) <= tested)) continue
    const y = next[v] as number
    const pv = prev[v] as number
    if (ru === rv) {
      if (tryWithin(s, u, v)) return true
      continue
    }
    const bound = held + (price[rv] as number)
    intoV[0] = u
    if (without1 + walkPrice(s, rv, v, intoV, 1, y) < bound - EPS) return put(s, u, 1, y, 0)
    if (without1 + walkPrice(s, rv, pv, intoV, 1, v) < bound - EPS) return put(s, u, 1, v, 0)
    if (xx >= 0) {
      intoV[1] = x
      if (without2 + walkPrice(s, rv, v, intoV, 2, y) < bound - EPS) return put(s, u, 2, y, 0)
    }
    intoU[0] = v
    const swapped = walkPrice(s, rv, pv, intoV, 1, y)
    if (swapped < bound && swapped + walkPrice(s, ru, before, intoU, 1, x) < bound - EPS) return put(s, u, 1, v, 1)
    if (xx >= 0) {
      const swapped2 = walkPrice(s, rv, pv, intoV, 2, y)
      if (swapped2 < bound && swapped2 + walkPrice(s, ru, before, intoU, 1, xx) < bound - EPS) return put(s, u, 2, v, 1)
      if (y < visits) {
        intoU[1] = y
        const both = walkPrice(s, rv, pv, intoV, 2, next[y] as number)
        if (both < bound && both + walkPrice(s, ru, before, intoU, 2, xx) < bound - EPS) return put(s, u, 2, v, 2)
      }
    }
    const tail = walkPrice(s, ru, u, none, 0, v)
    if (tail < bound && tail + walkPrice(s, rv, pv, none, 0, x) < bound - EPS) {
      swapTails(s, u, v)
      return true
    }
  }
  return recentU ? tryUnused(s, u, without1) : false
}

/** Into the cheapest of the crew-days not used yet: each is another. */
function tryUnused(s: Routes, u: number, without: number): boolean {
  const { visits, days } = s.model
  const room = (s.price[s.owner[u] as number] as number) - without
  let best = room - EPS
  let found = -1
  intoV[0] = u
  for (let r = 0; r < days; r++) {
    if (s.count[r] !== 0) continue
    const alone = walkPrice(s, r, visits + r, intoV, 1, visits + days + r)
    if (alone >= best) continue
    best = alone
    found = r
  }
  return found >= 0 && put(s, u, 1, visits + days + found, 0)
}

/** Exchanges `n` nodes from `u` on with `m` from `v` on, of another route. */
function put(s: Routes, u: number, n: number, v: number, m: number): boolean {
  const { next, prev, owner } = s
  const ru = owner[u] as number
  const rv = owner[v] as number
  const beforeU = prev[u] as number
  const beforeV = prev[v] as number
  let afterU = u
  for (let i = 0; i < n; i++) {
    intoV[i] = afterU
    afterU = next[afterU] as number
  }
  let afterV = v
  for (let i = 0; i < m; i++) {
    intoU[i] = afterV
    afterV = next[afterV] as number
  }
  relink(s, beforeU, intoU, m, afterU)
  relink(s, beforeV, intoV, n, afterV)
  refreshRoute(s, ru)
  refreshRoute(s, rv)
  return true
}

/** Within a route: the earlier of two after the later, the later before the earlier, both exchanged, or the stretch from one to the other turned round. */
function tryWithin(s: Routes, u: number, v: number): boolean {
  const { next, prev, pos } = s
  const r = s.owner[u] as number
  const a = (pos[u] as number) < (pos[v] as number) ? u : v
  const b = a === u ? v : u
  const size = (pos[b] as number) - (pos[a] as number) + 1
  if (along.length < size) along = new Int32Array(2 * size)
  const before = prev[a] as number
  const after = next[b] as number
  const bound = (s.price[r] as number) - EPS
  for (let way = 0; way < 4; way++) {
    if (way > 1 && size === 2) return false
    let node = a
    for (let i = 0; i < size; i++) {
      let at = i
      if (way === 0) at = i === 0 ? size - 1 : i - 1
      else if (way === 1) at = i === size - 1 ? 0 : i + 1
      else if (way === 2) at = i === 0 ? size - 1 : i === size - 1 ? 0 : i
      else at = size - 1 - i
      along[at] = node
      node = next[node] as number
    }
    if (walkPrice(s, r, before, along, size, after) < bound) {
      relink(s, before, along, size, after)
      refreshRoute(s, r)
      return true
    }
  }
  return false
}
