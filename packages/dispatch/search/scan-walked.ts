import type { Neighbours } from './neighbours.ts'
import { type Routes, refreshRoute } from './routes.ts'
import { relink, swapTails } from './splice.ts'
import { walkPrice } from './walk.ts'

const EPS = 1e-6
const none = new Int32Array(0)
const intoU = new Int32Array(3)
const intoV = new Int32Array(3)
let along = new Int32Array(256)

/**
 * The moves of visit `u` with its neighbours on crew-days that differ: each changed route is walked, unless its drives and its visits' own prices alone (no route costs less)
 * show that nothing is gained. Makes the first move that gains and says so.
 */
export function scanWalked(s: Routes, u: number, neighbours: Neighbours, tested: number): boolean {
  const { next, prev, owner, changed, price, soft } = s
  const { visits, days, row, place, table } = s.model
  const { linear } = table
  const { width, list } = neighbours
  const ru = owner[u] as number
  const before = prev[u] as number
  const recentU = (changed[ru] as number) > tested
  const x = next[u] as number
  const xx = x < visits ? (next[x] as number) : -1
  const held = price[ru] as number
  const gain1 = held - walkPrice(s, ru, before, none, 0, x)
  const gain2 = xx >= 0 ? held - walkPrice(s, ru, before, none, 0, xx) : 0
  const edgeU = table.edges[table.edgeOf[ru] as number] as Float64Array
  const pu = place[u] as number
  const px = place[x] as number
  const rowU = row[u] as number
  const rowB = row[before] as number
  const softU = soft[ru] as number
  const leaveU = (edgeU[rowB + pu] as number) + (edgeU[rowU + px] as number) + (linear[u * days + ru] as number)
  for (let i = 0; i < width; i++) {
    const v = list[u * width + i] as number
    const rv = owner[v] as number
    if (rv < 0 || (!recentU && (changed[rv] as number) <= tested)) continue
    if (ru === rv) {
      if (tryWithin(s, u, v)) return true
      continue
    }
    const y = next[v] as number
    const pv = prev[v] as number
    const edgeV = table.edges[table.edgeOf[rv] as number] as Float64Array
    const rowV = row[v] as number
    const rowPV = row[pv] as number
    const py = place[y] as number
    const placeV = place[v] as number
    const softV = soft[rv] as number
    const priceV = price[rv] as number
    const own = linear[u * days + rv] as number
    const toV = edgeV[rowPV + placeV] as number
    const toY = edgeV[rowV + py] as number
    const ownV = linear[v * days + ru] as number
    if (own < Number.POSITIVE_INFINITY) {
      intoV[0] = u
      const toU = edgeV[rowV + pu] as number
      const fromU = edgeV[rowU + py] as number
      const room = gain1 + softV - own - EPS
      if (toU + fromU - toY < room && walkPrice(s, rv, v, intoV, 1, y) - priceV < gain1 - EPS) return put(s, u, 1, y, 0)
      const first = (edgeV[rowPV + pu] as number) + (edgeV[rowU + placeV] as number) - toV
      if (first < room && walkPrice(s, rv, pv, intoV, 1, v) - priceV < gain1 - EPS) return put(s, u, 1, v, 0)
      if (xx >= 0) {
        intoV[1] = x
        const pair =
          toU + (edgeV[rowU + px] as number) + (edgeV[(row[x] as number) + py] as number) - toY + (linear[x * days + rv] as number)
        if (pair < gain2 + softV - own - EPS && walkPrice(s, rv, v, intoV, 2, y) - priceV < gain2 - EPS) return put(s, u, 2, y, 0)
      }
      if (ownV < Number.POSITIVE_INFINITY) {
        const backU = (edgeU[rowB + placeV] as number) + (edgeU[rowV + px] as number) + ownV - leaveU
        const backV = (edgeV[rowPV + pu] as number) + fromU + own - toV - toY - (linear[v * days + rv] as number)
        if (backU + backV < softU + softV - EPS && trySwap(s, u, 1, v, 1)) return true
        if (xx >= 0 && trySwap(s, u, 2, v, 1)) return true
        if (xx >= 0 && y < visits && trySwap(s, u, 2, v, 2)) return true
      }
    }
    if (ownV < Number.POSITIVE_INFINITY) {
      const bound = held + priceV - EPS
      const tail = walkPrice(s, ru, u, none, 0, v)
      if (tail < bound && tail + walkPrice(s, rv, pv, none, 0, x) < bound) {
        swapTails(s, u, v)
        return true
      }
    }
  }
  return recentU ? tryUnused(s, u, gain1) : false
}

/** Into the cheapest of the crew-days not used yet: each is another. */
function tryUnused(s: Routes, u: number, gain: number): boolean {
  const { visits, days, table, row, place } = s.model
  let best = gain - EPS
  let found = -1
  intoV[0] = u
  for (let r = 0; r < days; r++) {
    if (s.count[r] !== 0) continue
    const edge = table.edges[table.edgeOf[r] as number] as Float64Array
    if ((edge[(row[visits + r] as number) + (place[u] as number)] as number) + (table.linear[u * days + r] as number) >= best) continue
    const alone = walkPrice(s, r, visits + r, intoV, 1, visits + days + r)
    if (alone >= best) continue
    best = alone
    found = r
  }
  return found >= 0 && put(s, u, 1, visits + days + found, 0)
}

/** Exchanges `n` nodes from `u` on with `m` from `v` on when that gains; the longer side is walked only if the other leaves hope. */
function trySwap(s: Routes, u: number, n: number, v: number, m: number): boolean {
  const { next, prev, owner, price } = s
  const ru = owner[u] as number
  const rv = owner[v] as number
  const bound = (price[ru] as number) + (price[rv] as number) - EPS
  intoV[0] = u
  intoV[1] = next[u] as number
  intoU[0] = v
  intoU[1] = next[v] as number
  const afterU = n === 1 ? (next[u] as number) : (next[next[u] as number] as number)
  const afterV = m === 1 ? (next[v] as number) : (next[next[v] as number] as number)
  const one = walkPrice(s, rv, prev[v] as number, intoV, n, afterV)
  if (one >= bound || one + walkPrice(s, ru, prev[u] as number, intoU, m, afterU) >= bound) return false
  return put(s, u, n, v, m)
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
    if (way > 0 && size === 2) return false
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
