import type { Routes } from './route-types.ts'
import { refreshRoute } from './routes.ts'

/** Puts `count` nodes of `list` between `a` and `b`; the caller refreshes the route. */
export function relink(s: Routes, a: number, list: Int32Array, count: number, b: number): void {
  const { next, prev } = s
  let last = a
  for (let i = 0; i < count; i++) {
    const node = list[i] as number
    next[last] = node
    prev[node] = last
    last = node
  }
  next[last] = b
  prev[b] = last
}

/** Gives the route of `u`, after `u`, what its other route has from `v` on, and the other, after v's predecessor, what followed `u`. */
export function swapTails(s: Routes, u: number, v: number): void {
  const { next, prev, owner } = s
  const { visits, days } = s.model
  const ru = owner[u] as number
  const rv = owner[v] as number
  const endU = visits + days + ru
  const endV = visits + days + rv
  const beforeV = prev[v] as number
  const afterU = next[u] as number
  const lastU = prev[endU] as number
  const lastV = prev[endV] as number
  if (v === endV) link(s, u, endU)
  else {
    link(s, u, v)
    link(s, lastV, endU)
  }
  if (afterU === endU) link(s, beforeV, endV)
  else {
    link(s, beforeV, afterU)
    link(s, lastU, endV)
  }
  refreshRoute(s, ru)
  refreshRoute(s, rv)
}

function link(s: Routes, a: number, b: number): void {
  s.next[a] = b
  s.prev[b] = a
}

/** Puts visit `u`, at present left out, after node `v`. */
export function insertAfter(s: Routes, u: number, v: number): void {
  const after = s.next[v] as number
  link(s, v, u)
  link(s, u, after)
  refreshRoute(s, s.owner[v] as number)
}

/** Leaves visit `u` out. */
export function takeOut(s: Routes, u: number): void {
  const r = s.owner[u] as number
  link(s, s.prev[u] as number, s.next[u] as number)
  s.owner[u] = -1
  refreshRoute(s, r)
}
