import type { Model } from './model.ts'
import type { Penalties, Routes } from './route-types.ts'
import { measureWalk, walkState } from './walk.ts'

export function emptyRoutes(model: Model, penalties: Penalties): Routes {
  const ints = () => new Int32Array(model.nodes)
  const routes: Routes = {
    model,
    penalties,
    next: ints(),
    prev: ints(),
    pos: ints(),
    owner: ints(),
    aheadDur: ints(),
    aheadWarp: ints(),
    aheadEarly: ints(),
    aheadLate: ints(),
    aheadLoad: new Float64Array(model.nodes),
    behindDur: ints(),
    behindWarp: ints(),
    behindEarly: ints(),
    behindLate: ints(),
    count: new Int32Array(model.days),
    warp: new Int32Array(model.days),
    excess: new Float64Array(model.days),
    fault: new Float64Array(model.days),
    price: new Float64Array(model.days),
    soft: new Float64Array(model.days),
    changed: new Int32Array(model.days),
    clock: { now: 0 },
    walk: walkState(model),
  }
  clearRoutes(routes)
  return routes
}

/** Takes everything out. */
export function clearRoutes(s: Routes): void {
  const { visits, days } = s.model
  s.owner.fill(-1, 0, visits)
  for (let r = 0; r < days; r++) {
    s.next[visits + r] = visits + days + r
    s.prev[visits + days + r] = visits + r
    s.next[visits + days + r] = -1
    s.prev[visits + r] = -1
    s.owner[visits + r] = r
    s.owner[visits + days + r] = r
    refreshRoute(s, r)
  }
}

/** Works out a route's stored pieces again after its chain has changed. */
export function refreshRoute(s: Routes, r: number): void {
  const { visits, days } = s.model
  let node = s.next[visits + r] as number
  let at = 1
  s.pos[visits + r] = 0
  while (node < visits) {
    s.owner[node] = r
    s.pos[node] = at++
    node = s.next[node] as number
  }
  s.pos[visits + days + r] = at
  s.count[r] = at - 1
  s.changed[r] = ++s.clock.now
  if (s.model.uniform) measureUniform(s, r)
  else measureWalk(s, r)
}

function measureUniform(s: Routes, r: number): void {
  const { visits, days, row, place, duration, service, open, close, demand, capacity } = s.model
  const { next, prev, aheadDur, aheadWarp, aheadEarly, aheadLate, aheadLoad, behindDur, behindWarp, behindEarly, behindLate } = s
  const start = visits + r
  const end = visits + days + r
  let dur = 0
  let warp = 0
  let early = open[start] as number
  let late = close[start] as number
  let load = 0
  let node = start
  while (true) {
    aheadDur[node] = dur
    aheadWarp[node] = warp
    aheadEarly[node] = early
    aheadLate[node] = late
    aheadLoad[node] = load
    if (node === end) break
    const after = next[node] as number
    const delta = dur - warp + (duration[(row[node] as number) + (place[after] as number)] as number)
    const wait = Math.max((open[after] as number) - delta - late, 0)
    const more = Math.max(early + delta - (close[after] as number), 0)
    dur = delta + warp + (service[after] as number) + wait
    warp += more
    early = Math.max((open[after] as number) - delta, early) - wait
    late = Math.min((close[after] as number) - delta, late) + more
    load += demand[after] as number
    node = after
  }
  s.warp[r] = warp
  s.excess[r] = load > capacity ? load - capacity : 0
  s.fault[r] = warp * s.penalties.warp + (s.excess[r] as number) * s.penalties.load
  dur = 0
  warp = 0
  early = open[end] as number
  late = close[end] as number
  node = end
  while (true) {
    behindDur[node] = dur
    behindWarp[node] = warp
    behindEarly[node] = early
    behindLate[node] = late
    if (node === start) break
    const before = prev[node] as number
    const delta = (service[before] as number) + (duration[(row[before] as number) + (place[node] as number)] as number)
    const wait = Math.max(early - delta - (close[before] as number), 0)
    const more = Math.max((open[before] as number) + delta - late, 0)
    dur = delta + dur + wait
    warp += more
    early = Math.max(early - delta, open[before] as number) - wait
    late = Math.min(late - delta, close[before] as number) + more
    node = before
  }
}

/** Time warp of: the route up to and with `a`, then `count` nodes of `list`, then from `b` to its route's end. */
export function joinedWarp(s: Routes, a: number, list: Int32Array, count: number, b: number): number {
  const { row, place, duration, service, open, close } = s.model
  let dur = s.aheadDur[a] as number
  let warp = s.aheadWarp[a] as number
  let early = s.aheadEarly[a] as number
  let late = s.aheadLate[a] as number
  let last = row[a] as number
  for (let i = 0; i < count; i++) {
    const node = list[i] as number
    const delta = dur - warp + (duration[last + (place[node] as number)] as number)
    const opens = (open[node] as number) - delta
    const closes = (close[node] as number) - delta
    const wait = opens > late ? opens - late : 0
    const more = early > closes ? early - closes : 0
    dur = delta + warp + (service[node] as number) + wait
    warp += more
    early = Math.max(opens, early) - wait
    late = Math.min(closes, late) + more
    last = row[node] as number
  }
  const delta = dur - warp + (duration[last + (place[b] as number)] as number)
  const more = early + delta - (s.behindLate[b] as number)
  return warp + (s.behindWarp[b] as number) + Math.max(more, 0)
}
