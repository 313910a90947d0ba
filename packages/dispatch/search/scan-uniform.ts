import type { Neighbours } from './neighbours.ts'
import type { Routes } from './route-types.ts'
import { joinedWarp, refreshRoute } from './routes.ts'
import { relink, swapTails } from './splice.ts'

const EPS = 1e-6
const intoU = new Int32Array(3)
const intoV = new Int32Array(3)
let along = new Int32Array(256)

/** Tries every move of visit `u` with its neighbours on alike crew-days; makes the first that gains and says so. `tested`: when `u` was last tried. */
export function scanUniform(s: Routes, u: number, neighbours: Neighbours, tested: number): boolean {
  const { next, prev, owner, changed } = s
  const { visits, days, row, place, edge } = s.model
  const { width, list } = neighbours
  const ru = owner[u] as number
  const before = prev[u] as number
  const x = next[u] as number
  const xx = x < visits ? (next[x] as number) : -1
  const xxx = xx >= 0 && xx < visits ? (next[xx] as number) : -1
  const rowU = row[u] as number
  const rowP = row[before] as number
  const rowX = row[x] as number
  const pu = place[u] as number
  const px = place[x] as number
  const toU = edge[rowP + pu] as number
  const toX = edge[rowU + px] as number
  const gain1 = (edge[rowP + px] as number) - toU - toX
  const pxx = xx >= 0 ? (place[xx] as number) : 0
  const rowXX = xx >= 0 ? (row[xx] as number) : 0
  const toXX = edge[rowX + pxx] as number
  const gain2 = (edge[rowP + pxx] as number) - toU - toXX
  const pxxx = xxx >= 0 ? (place[xxx] as number) : 0
  const toXXX = edge[rowXX + pxxx] as number
  const gain3 = (edge[rowP + pxxx] as number) - toU - toXXX
  const faultU = s.fault[ru] as number
  const recentU = (changed[ru] as number) > tested
  const base = u * width
  for (let i = 0; i < width; i++) {
    const v = list[base + i] as number
    const rv = owner[v] as number
    if (rv < 0 || (!recentU && (changed[rv] as number) <= tested)) continue
    const y = next[v] as number
    const pv = prev[v] as number
    const pvPlace = place[v] as number
    const rowV = row[v] as number
    const rowPV = row[pv] as number
    const py = place[y] as number
    const toY = edge[rowV + py] as number
    const toV = edge[rowPV + pvPlace] as number
    const vToU = edge[rowV + pu] as number
    const bound = ru === rv ? faultU : faultU + (s.fault[rv] as number)
    if (v !== before) {
      const put1 = vToU + (edge[rowU + py] as number) - toY
      if (gain1 + put1 < bound - EPS && tryExchange(s, u, 1, y, 0, gain1 + put1, bound)) return true
      if (xx >= 0 && v !== x) {
        const put2 = vToU + (edge[rowX + py] as number) - toY
        if (gain2 + put2 < bound - EPS && tryExchange(s, u, 2, y, 0, gain2 + put2, bound)) return true
        if (xxx >= 0 && v !== xx) {
          const put3 = vToU + (edge[rowXX + py] as number) - toY
          if (gain3 + put3 < bound - EPS && tryExchange(s, u, 3, y, 0, gain3 + put3, bound)) return true
        }
      }
    }
    if (pv >= visits) {
      // First of its route: the place before it is reached from nowhere else.
      const put = (edge[rowPV + pu] as number) + (edge[rowU + pvPlace] as number) - toV
      if (v !== x && gain1 + put < bound - EPS && tryExchange(s, u, 1, v, 0, gain1 + put, bound)) return true
    }
    const pvToU = edge[rowPV + pu] as number
    if (v !== x && v !== before) {
      const fromP = edge[rowP + pvPlace] as number
      const swap1 = fromP + (edge[rowV + px] as number) + pvToU + (edge[rowU + py] as number) - toU - toX - toV - toY
      if (swap1 < bound - EPS && tryExchange(s, u, 1, v, 1, swap1, bound)) return true
      if (xx >= 0 && x !== pv) {
        const xToY = edge[rowX + py] as number
        const swap2 = fromP + (edge[rowV + pxx] as number) + pvToU + xToY - toU - toXX - toV - toY
        if (swap2 < bound - EPS && tryExchange(s, u, 2, v, 1, swap2, bound)) return true
        if (y < visits && y !== before) {
          const yy = next[y] as number
          const rowY = row[y] as number
          const swap22 =
            fromP +
            (edge[rowY + pxx] as number) +
            pvToU +
            (edge[rowX + (place[yy] as number)] as number) -
            toU -
            toXX -
            toV -
            (edge[rowY + (place[yy] as number)] as number)
          if (swap22 < bound - EPS && tryExchange(s, u, 2, v, 2, swap22, bound)) return true
        }
      }
    }
    if (ru !== rv) {
      const tails = (edge[rowU + pvPlace] as number) + (edge[rowPV + px] as number) - toX - toV
      if (tails < bound - EPS && tryTails(s, u, v, tails, bound)) return true
      const tails2 = vToU + (edge[rowP + py] as number) - toY - toU
      if (tails2 < bound - EPS && tryTails(s, v, u, tails2, bound)) return true
    }
  }
  return recentU ? tryUnused(s, u, visits + days, toU, gain1, gain2) : false
}

/** An unused crew-day: `u` alone, `u` with the next, or everything from `u` on. */
function tryUnused(s: Routes, u: number, ends: number, toU: number, gain1: number, gain2: number): boolean {
  const { row, place, edge, visits, days } = s.model
  let free = -1
  for (let r = 0; r < days && free < 0; r++) if (s.count[r] === 0) free = r
  if (free < 0) return false
  const start = visits + free
  const end = ends + free
  const bound = s.fault[s.owner[u] as number] as number
  const x = s.next[u] as number
  const out = edge[(row[start] as number) + (place[u] as number)] as number
  const alone = gain1 + out + (edge[(row[u] as number) + (place[end] as number)] as number)
  if (alone < bound - EPS && tryExchange(s, u, 1, end, 0, alone, bound)) return true
  if (x >= visits) return false
  const pair = gain2 + out + (edge[(row[x] as number) + (place[end] as number)] as number)
  if (pair < bound - EPS && tryExchange(s, u, 2, end, 0, pair, bound)) return true
  if ((s.prev[u] as number) >= visits) return false
  const tail = out - toU + (edge[(row[s.prev[u] as number] as number) + (place[end] as number)] as number)
  return tail < bound - EPS && tryTails(s, start, u, tail, bound)
}

function tryTails(s: Routes, u: number, v: number, delta: number, bound: number): boolean {
  const { penalties, next, prev, aheadLoad } = s
  const { visits, days, capacity } = s.model
  const ru = s.owner[u] as number
  const rv = s.owner[v] as number
  const beforeV = prev[v] as number
  const headU = aheadLoad[u] as number
  const headV = aheadLoad[beforeV] as number
  const loadU = headU + (aheadLoad[visits + days + rv] as number) - headV
  const loadV = headV + (aheadLoad[visits + days + ru] as number) - headU
  let price = delta
  if (loadU > capacity) price += (loadU - capacity) * penalties.load
  if (loadV > capacity) price += (loadV - capacity) * penalties.load
  if (price > bound - EPS) return false
  price += joinedWarp(s, u, along, 0, v) * penalties.warp
  if (price > bound - EPS) return false
  price += joinedWarp(s, beforeV, along, 0, next[u] as number) * penalties.warp
  if (price > bound - EPS) return false
  swapTails(s, u, v)
  return true
}

/** Exchanges `n` nodes from `u` on with `m` nodes from `v` on (none: puts them before `v`), when price with faults falls below `bound`. */
function tryExchange(s: Routes, u: number, n: number, v: number, m: number, delta: number, bound: number): boolean {
  const { next, prev, owner, penalties, aheadLoad } = s
  const { visits, days, capacity, demand } = s.model
  const ru = owner[u] as number
  const rv = owner[v] as number
  const beforeU = prev[u] as number
  const beforeV = prev[v] as number
  if (ru === rv) return tryWithin(s, u, n, v, m, delta, bound)
  let afterU = u
  let shift = 0
  for (let i = 0; i < n; i++) {
    intoV[i] = afterU
    shift += demand[afterU] as number
    afterU = next[afterU] as number
  }
  let afterV = v
  for (let i = 0; i < m; i++) {
    intoU[i] = afterV
    shift -= demand[afterV] as number
    afterV = next[afterV] as number
  }
  const loadU = (aheadLoad[visits + days + ru] as number) - shift
  const loadV = (aheadLoad[visits + days + rv] as number) + shift
  let price = delta
  if (loadU > capacity) price += (loadU - capacity) * penalties.load
  if (loadV > capacity) price += (loadV - capacity) * penalties.load
  if (price > bound - EPS) return false
  price += joinedWarp(s, beforeV, intoV, n, afterV) * penalties.warp
  if (price > bound - EPS) return false
  price += joinedWarp(s, beforeU, intoU, m, afterU) * penalties.warp
  if (price > bound - EPS) return false
  relink(s, beforeU, intoU, m, afterU)
  relink(s, beforeV, intoV, n, afterV)
  refreshRoute(s, ru)
  refreshRoute(s, rv)
  return true
}

/** The same within one route: the stretch between is walked anew. */
function tryWithin(s: Routes, u: number, n: number, v: number, m: number, delta: number, bound: number): boolean {
  const { next, prev, pos, penalties } = s
  const { capacity } = s.model
  const r = s.owner[u] as number
  const forward = (pos[u] as number) < (pos[v] as number)
  const a = forward ? u : v
  const countA = forward ? n : m
  const b = forward ? v : u
  const countB = forward ? m : n
  const size = (pos[b] as number) + countB - (pos[a] as number)
  if (along.length < size) along = new Int32Array(2 * size)
  let firstMiddle = a
  for (let i = 0; i < countA; i++) firstMiddle = next[firstMiddle] as number
  if ((pos[firstMiddle] as number) > (pos[b] as number)) return false
  let k = 0
  let after = b
  for (let i = 0; i < countB; i++) {
    along[k++] = after
    after = next[after] as number
  }
  for (let node = firstMiddle; node !== b; node = next[node] as number) along[k++] = node
  for (let node = a, i = 0; i < countA; i++) {
    along[k++] = node
    node = next[node] as number
  }
  const before = prev[a] as number
  const load = s.aheadLoad[s.model.visits + s.model.days + r] as number
  const excess = load > capacity ? (load - capacity) * penalties.load : 0
  if (delta + excess + joinedWarp(s, before, along, k, after) * penalties.warp > bound - EPS) return false
  relink(s, before, along, k, after)
  refreshRoute(s, r)
  return true
}
