import type { Routes } from './route-types.ts'
import { refreshRoute } from './routes.ts'
import { relink } from './splice.ts'
import { walkPrice } from './walk.ts'

const EPS = 1e-6
let along = new Int32Array(256)

/** Within a walked route: the later of two before the earlier, the earlier after the later, both exchanged, or the stretch from one to the other turned round. */
export function tryWithin(s: Routes, u: number, v: number): boolean {
  const { next, prev, pos } = s
  const { row, place, table } = s.model
  const r = s.owner[u] as number
  const a = (pos[u] as number) < (pos[v] as number) ? u : v
  const b = a === u ? v : u
  const size = (pos[b] as number) - (pos[a] as number) + 1
  if (along.length < size) along = new Int32Array(2 * size)
  const before = prev[a] as number
  const after = next[b] as number
  const bound = (s.price[r] as number) - EPS
  const edge = table.edges[table.edgeOf[r] as number] as Float64Array
  const drive = (from: number, to: number): number => edge[(row[from] as number) + (place[to] as number)] as number
  const an = next[a] as number
  const bp = prev[b] as number
  const kept = drive(before, a) + drive(b, after)
  // What can be won beside drives: the route's faults, overtime and unfairness.
  const soft = (s.soft[r] as number) - EPS
  for (let way = 0; way < 4; way++) {
    if (way > 0 && size === 2) return false
    if (way === 0 && size > 2 && drive(before, b) + drive(b, a) + drive(bp, after) - kept - drive(bp, b) >= soft) continue
    if (way === 1 && drive(before, an) + drive(b, a) + drive(a, after) - kept - drive(a, an) >= soft) continue
    if (way === 2 && size > 3) {
      const ends = drive(before, b) + drive(b, an) + drive(bp, a) + drive(a, after)
      if (ends - kept - drive(a, an) - drive(bp, b) >= soft) continue
    }
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
