import type { Neighbours } from './neighbours.ts'
import type { Routes } from './route-types.ts'
import { joinedWarp } from './routes.ts'
import { insertAfter, takeOut } from './splice.ts'
import { walkPrice } from './walk.ts'

const one = new Int32Array(1)
const none = new Int32Array(0)

/** What putting `u` after node `v` adds, faults priced. */
export function addedPrice(s: Routes, u: number, v: number): number {
  const { visits, days, row, place, edge, demand, capacity, uniform } = s.model
  const y = s.next[v] as number
  const r = s.owner[v] as number
  one[0] = u
  if (!uniform) return walkPrice(s, r, v, one, 1, y) - (s.price[r] as number)
  const rowV = row[v] as number
  const py = place[y] as number
  const drive = (edge[rowV + (place[u] as number)] as number) + (edge[(row[u] as number) + py] as number) - (edge[rowV + py] as number)
  const load = (s.aheadLoad[visits + days + r] as number) + (demand[u] as number)
  const excess = load > capacity ? load - capacity : 0
  return drive + joinedWarp(s, v, one, 1, y) * s.penalties.warp + excess * s.penalties.load - (s.fault[r] as number)
}

/** Puts a left-out visit where it adds least, when that is less than leaving it out (a visit that must be planned always goes in). Tells whether it did. */
export function tryPlace(s: Routes, u: number, neighbours: Neighbours): boolean {
  const { visits, days, required, leaveOut, uniform } = s.model
  let best = required[u] === 1 ? Number.MAX_VALUE : (leaveOut[u] as number) - 1e-6
  let where = -1
  const weigh = (v: number): void => {
    const added = addedPrice(s, u, v)
    if (added < best) {
      best = added
      where = v
    }
  }
  for (let i = 0; i < neighbours.width; i++) {
    const v = neighbours.list[u * neighbours.width + i] as number
    if ((s.owner[v] as number) < 0) continue
    weigh(v)
    if ((s.prev[v] as number) >= visits) weigh(s.prev[v] as number)
  }
  for (let r = 0; r < days; r++) {
    if (s.count[r] !== 0) continue
    weigh(visits + r)
    if (uniform) break
  }
  // Nobody near may take it: look everywhere.
  if (where < 0) {
    for (let r = 0; r < days; r++) {
      for (let v = visits + r; v < visits || v === visits + r; v = s.next[v] as number) weigh(v)
    }
  }
  if (where < 0) return false
  insertAfter(s, u, where)
  return true
}

/** Leaves an optional visit out when that is cheaper than going there. */
export function tryLeaveOut(s: Routes, u: number): boolean {
  const { required, leaveOut, uniform, row, place, edge, visits, days, demand, capacity } = s.model
  if (required[u] === 1) return false
  const r = s.owner[u] as number
  const p = s.prev[u] as number
  const x = s.next[u] as number
  let saved: number
  if (uniform) {
    const rowP = row[p] as number
    const drive = (edge[rowP + (place[u] as number)] as number) + (edge[(row[u] as number) + (place[x] as number)] as number)
    const load = (s.aheadLoad[visits + days + r] as number) - (demand[u] as number)
    const fault = joinedWarp(s, p, none, 0, x) * s.penalties.warp + Math.max(0, load - capacity) * s.penalties.load
    saved = drive - (edge[rowP + (place[x] as number)] as number) + (s.fault[r] as number) - fault
  } else saved = (s.price[r] as number) - walkPrice(s, r, p, none, 0, x)
  if (saved <= (leaveOut[u] as number) + 1e-6) return false
  takeOut(s, u)
  return true
}
