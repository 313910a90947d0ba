import { lag, notBefore } from './lag.ts'
import type { Model } from './model.ts'
import type { Routes, WalkState } from './route-types.ts'

export const FIELDS = 13
/** Where in a stored walk stand the price so far (drives, lateness, dislikes) and the drives' part of it. */
export const PRICE = 1
export const DRIVES = 9
const DAY = 17

export function walkState(model: Model): WalkState {
  const { crewDays } = model.problem
  const day = new Float64Array(DAY * crewDays.length)
  const pauses: number[] = []
  const rush: number[] = []
  crewDays.forEach((crew, r) => {
    const pauseFrom = pauses.length / 3
    for (const pause of crew.pauses) pauses.push(pause.start.from, pause.start.to, pause.ticks)
    const rushFrom = rush.length / 3
    for (const span of crew.rush ?? []) rush.push(span.from, span.to, span.factor)
    day.set(
      [
        crew.shift.from,
        crew.shift.to,
        crew.latestEnd,
        crew.overtimePrice,
        crew.sendPrice,
        crew.fairShareTicks ?? Number.MAX_VALUE,
        crew.unfairPrice ?? 0,
        crew.capacity.ft3,
        crew.capacity.lb,
        pauseFrom,
        pauses.length / 3,
        rushFrom,
        rush.length / 3,
        crew.reserve?.by ?? 0,
        crew.reserve?.deviations ?? 0,
        (crew.reserve?.driveSpread ?? 0) ** 2,
        crew.reserve?.price ?? 0,
      ],
      r * DAY,
    )
  })
  const stored = new Float64Array(model.uniform ? 0 : FIELDS * model.nodes)
  const loads = Float64Array.from(model.problem.visits.flatMap(({ out, back }) => [out.ft3, back.ft3, out.lb, back.lb]))
  const lasts = Float64Array.from(
    model.problem.visits.flatMap(({ serviceTicks, lasts }) => [(lasts?.mean ?? serviceTicks) - serviceTicks, lasts?.variance ?? 0]),
  )
  const stands = Float64Array.from(
    model.problem.visits.flatMap(({ stands }) => (stands ? [stands.crewDay, stands.start, stands.price] : [-1, 0, 0])),
  )
  return {
    scratch: new Int32Array(model.visits),
    loads,
    lasts,
    stands,
    stored,
    day,
    pauses: Float64Array.from(pauses),
    rush: Float64Array.from(rush),
    warp: 0,
    excess: 0,
    soft: 0,
  }
}

/** Walks a whole route as it stands and keeps what later walks begin from. */
export function measureWalk(s: Routes, r: number): void {
  const start = s.model.visits + r
  s.walk.stored.fill(0, start * FIELDS, start * FIELDS + FIELDS)
  s.walk.stored[start * FIELDS] = s.walk.day[r * DAY] as number
  s.price[r] = walkPrice(s, r, start, NONE, 0, s.next[start] as number, true)
  s.warp[r] = s.walk.warp
  s.excess[r] = s.walk.excess
  s.soft[r] = s.walk.soft
  s.fault[r] = s.walk.warp * s.penalties.warp + s.walk.excess * s.penalties.load
}

const NONE = new Int32Array(0)

/**
 * Price of crew-day `r` with its faults priced, were it: as it stands up to and with node `a`, then `count` nodes of `list`, then from `b` along its chain to an
 * end (its own or, when tails change hands, another's). Infinity when a visit may not be there.
 */
export function walkPrice(s: Routes, r: number, a: number, list: Int32Array, count: number, b: number, keep = false): number {
  const { model, next, walk } = s
  const { visits, days, row, place, duration, service, table } = model
  const { stored, day, pauses, rush, loads, lasts, stands } = walk
  const { linear, from, to, firstWindow, lastWindow, groups } = table
  const edge = table.edges[table.edgeOf[r] as number] as Float64Array
  const group = table.group[r] as number
  const d = r * DAY
  const start = visits + r
  const end = visits + days + r
  const pauseEnd = day[d + 10] as number
  const rushFrom = day[d + 11] as number
  const rushEnd = day[d + 12] as number
  const driveVariance = day[d + 15] as number
  const reservePrice = day[d + 16] as number
  const k = a * FIELDS
  let t = stored[k] as number
  let price = stored[k + 1] as number
  let warp = stored[k + 2] as number
  let pause = stored[k + 3] as number
  let busy = stored[k + 4] as number
  let backFt3 = stored[k + 5] as number
  let mostFt3 = stored[k + 6] as number
  let backLb = stored[k + 7] as number
  let mostLb = stored[k + 8] as number
  let drives = stored[k + 9] as number
  let behind = stored[k + 10] as number
  let variance = stored[k + 11] as number
  let retimed = stored[k + 12] as number
  if (pause < (day[d + 9] as number)) pause = day[d + 9] as number
  let last = a
  let i = 0
  let node = count > 0 ? (list[0] as number) : b
  if (a === start && node >= visits) {
    walk.warp = 0
    walk.excess = 0
    walk.soft = 0
    return 0
  }
  while (true) {
    const isEnd = node >= visits
    if (isEnd) node = end
    const leg = (row[last] as number) + (place[node] as number)
    const table0 = duration[leg] as number
    let drive = table0
    for (let h = rushFrom; h < rushEnd; h++) {
      if (t >= (rush[3 * h] as number) && t <= (rush[3 * h + 1] as number)) drive = Math.round(table0 * (rush[3 * h + 2] as number))
    }
    let arrival = t + drive
    let w = isEnd ? 0 : (firstWindow[node * groups + group] as number)
    const wLast = isEnd ? -1 : (lastWindow[node * groups + group] as number)
    while (pause < pauseEnd) {
      while (w < wLast && (to[w] as number) < arrival) w++
      const begin = isEnd ? arrival : Math.max(arrival, from[w] as number)
      const earliest = pauses[3 * pause] as number
      const latest = pauses[3 * pause + 1] as number
      const ticks = pauses[3 * pause + 2] as number
      const onArrival = Math.max(arrival, earliest)
      const free = onArrival <= latest && onArrival + ticks <= begin
      if (!free && begin + (service[node] as number) <= latest) break
      if (onArrival <= latest) arrival = onArrival + ticks
      else {
        let before = Math.max(t, earliest)
        if (before > latest) {
          warp += before - latest
          before = latest
        }
        t = before + ticks
        drive = table0
        for (let h = rushFrom; h < rushEnd; h++) {
          if (t >= (rush[3 * h] as number) && t <= (rush[3 * h + 1] as number)) drive = Math.round(table0 * (rush[3 * h + 2] as number))
        }
        arrival = t + drive
      }
      pause++
    }
    price += edge[leg] as number
    drives += edge[leg] as number
    busy += drive + (service[node] as number)
    variance += drive * drive * driveVariance
    if (isEnd) {
      t = arrival
      // A day that ends late drives home later: into the rush hour, where one lies there.
      if (reservePrice > 0) {
        const leaves = (day[d + 13] as number) - table0
        let home = table0
        for (let h = rushFrom; h < rushEnd; h++) {
          if (leaves >= (rush[3 * h] as number) && leaves <= (rush[3 * h + 1] as number))
            home = Math.round(table0 * (rush[3 * h + 2] as number))
        }
        if (home > drive) behind += home - drive
      }
      break
    }
    price += linear[node * days + r] as number
    if (price === Number.POSITIVE_INFINITY) return price
    while (w < wLast && (to[w] as number) < arrival) w++
    t = Math.max(arrival, from[w] as number)
    if (t > (to[w] as number)) {
      warp += t - (to[w] as number)
      t = to[w] as number
    }
    if (stands[3 * node] === r && stands[3 * node + 1] !== t) retimed += stands[3 * node + 2] as number
    if (reservePrice > 0) {
      notBefore(arrival - t + behind, variance)
      behind = lag.mean + (lasts[2 * node] as number)
      variance = lag.variance + (lasts[2 * node + 1] as number)
    }
    t += service[node] as number
    // On board at its fullest: before the visit what is still to go out, after it what has come back.
    const l = 4 * node
    const goesFt3 = loads[l] as number
    const comesFt3 = loads[l + 1] as number
    const goesLb = loads[l + 2] as number
    const comesLb = loads[l + 3] as number
    mostFt3 = Math.max(mostFt3 + goesFt3, backFt3 + Math.max(goesFt3, comesFt3))
    mostLb = Math.max(mostLb + goesLb, backLb + Math.max(goesLb, comesLb))
    backFt3 += comesFt3
    backLb += comesLb
    if (keep) {
      const n = node * FIELDS
      stored[n] = t
      stored[n + 1] = price
      stored[n + 2] = warp
      stored[n + 3] = pause
      stored[n + 4] = busy
      stored[n + 5] = backFt3
      stored[n + 6] = mostFt3
      stored[n + 7] = backLb
      stored[n + 8] = mostLb
      stored[n + 9] = drives
      stored[n + 10] = behind
      stored[n + 11] = variance
      stored[n + 12] = retimed
    }
    last = node
    i++
    node = i < count ? (list[i] as number) : i === count ? b : (next[node] as number)
  }
  let reserve = 0
  if (reservePrice > 0) {
    const end = t + behind + (day[d + 14] as number) * Math.sqrt(variance)
    reserve = Math.max(0, end - (day[d + 13] as number)) * reservePrice
  }
  const latestEnd = day[d + 2] as number
  if (t > latestEnd) {
    warp += t - latestEnd
    t = latestEnd
  }
  const excess =
    (100 * Math.max(0, mostFt3 - (day[d + 7] as number))) / Math.max(1, day[d + 7] as number) +
    (100 * Math.max(0, mostLb - (day[d + 8] as number))) / Math.max(1, day[d + 8] as number)
  walk.warp = warp
  walk.excess = excess
  const overtime = Math.max(0, t - (day[d + 1] as number)) * (day[d + 3] as number)
  const unfair = Math.max(0, busy - (day[d + 5] as number)) * (day[d + 6] as number)
  walk.soft = overtime + unfair + reserve + retimed + warp * s.penalties.warp + excess * s.penalties.load
  return price + (day[d + 4] as number) + walk.soft
}
