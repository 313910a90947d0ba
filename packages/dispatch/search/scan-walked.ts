import type { Neighbours } from './neighbours.ts'
import type { Routes } from './route-types.ts'
import { refreshRoute } from './routes.ts'
import { tryWithin } from './scan-within.ts'
import { relink, swapTails } from './splice.ts'
import { DRIVES, FIELDS, PRICE, walkPrice } from './walk.ts'

const EPS = 1e-6
const none = new Int32Array(0)
const intoU = new Int32Array(3)
const intoV = new Int32Array(3)

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
        if (trySwap(s, u, 1, v, 1)) return true
        if (xx >= 0 && trySwap(s, u, 2, v, 1)) return true
        if (xx >= 0 && y < visits && trySwap(s, u, 2, v, 2)) return true
      }
    }
    if (ownV < Number.POSITIVE_INFINITY && (edgeU !== edgeV || tailsMayGain(s, u, v))) {
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

/** On equal drive prices: can exchanging what follows `u` for what begins with `v` gain, by the drives and what the tails themselves cost? */
function tailsMayGain(s: Routes, u: number, v: number): boolean {
  const { next, prev, owner, soft } = s
  const { visits, days, row, place, table } = s.model
  const { stored } = s.walk
  const x = next[u] as number
  const pv = prev[v] as number
  if (x >= visits && pv >= visits) return true
  const ru = owner[u] as number
  const rv = owner[v] as number
  const edge = table.edges[table.edgeOf[ru] as number] as Float64Array
  const rowU = row[u] as number
  const rowPV = row[pv] as number
  // Both ends may lie at other places: what the last drives cost then is not known here.
  if (place[visits + days + ru] !== place[visits + days + rv]) return true
  const drives =
    (edge[rowU + (place[v] as number)] as number) +
    (edge[rowPV + (place[x] as number)] as number) -
    (edge[rowU + (place[x] as number)] as number) -
    (edge[rowPV + (place[v] as number)] as number)
  const own = (node: number, r: number): number => {
    const last = prev[visits + days + r] as number
    const to = last * FIELDS
    const from = node * FIELDS
    return (
      (stored[to + PRICE] as number) -
      (stored[to + DRIVES] as number) -
      (stored[from + PRICE] as number) +
      (stored[from + DRIVES] as number)
    )
  }
  return drives < (soft[ru] as number) + (soft[rv] as number) + own(u, ru) + own(pv, rv) - EPS
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

/** Exchanges `n` nodes from `u` on with `m` from `v` on when that gains; a side is walked only while there is hope. */
function trySwap(s: Routes, u: number, n: number, v: number, m: number): boolean {
  const { next, prev, owner, price, soft } = s
  const { row, place, table, days } = s.model
  const { linear } = table
  const ru = owner[u] as number
  const rv = owner[v] as number
  const x = next[u] as number
  const y = next[v] as number
  const lastU = n === 1 ? u : x
  const lastV = m === 1 ? v : y
  const afterU = next[lastU] as number
  const afterV = next[lastV] as number
  const edgeU = table.edges[table.edgeOf[ru] as number] as Float64Array
  const edgeV = table.edges[table.edgeOf[rv] as number] as Float64Array
  const pu = place[u] as number
  const pv = place[v] as number
  const rowB = row[prev[u] as number] as number
  const rowPV = row[prev[v] as number] as number
  const rowLastU = row[lastU] as number
  const rowLastV = row[lastV] as number
  const placeU = place[afterU] as number
  const placeV = place[afterV] as number
  let delta =
    (edgeU[rowB + pv] as number) +
    (edgeU[rowLastV + placeU] as number) -
    (edgeU[rowB + pu] as number) -
    (edgeU[rowLastU + placeU] as number)
  delta +=
    (edgeV[rowPV + pu] as number) +
    (edgeV[rowLastU + placeV] as number) -
    (edgeV[rowPV + pv] as number) -
    (edgeV[rowLastV + placeV] as number)
  delta +=
    (linear[u * days + rv] as number) +
    (linear[v * days + ru] as number) -
    (linear[u * days + ru] as number) -
    (linear[v * days + rv] as number)
  if (n === 2) {
    const leg = (row[u] as number) + (place[x] as number)
    delta += (edgeV[leg] as number) - (edgeU[leg] as number) + (linear[x * days + rv] as number) - (linear[x * days + ru] as number)
  }
  if (m === 2) {
    const leg = (row[v] as number) + (place[y] as number)
    delta += (edgeU[leg] as number) - (edgeV[leg] as number) + (linear[y * days + ru] as number) - (linear[y * days + rv] as number)
  }
  if (!(delta < (soft[ru] as number) + (soft[rv] as number) - EPS)) return false
  intoV[0] = u
  intoV[1] = x
  intoU[0] = v
  intoU[1] = y
  const bound = (price[ru] as number) + (price[rv] as number) - EPS
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
