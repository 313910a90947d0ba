import type { CrewDay, RoutedVisit, RoutingProblem, Span } from '../problem/problem.ts'

/** What depends on the crew-day: its drive prices, and which visits it may do in which windows at what price. */
export interface DayTables {
  /** Drive prices, one table for each pair of prices that occurs, and which one a crew-day uses. */
  readonly edges: readonly Float64Array[]
  readonly edgeOf: Int32Array
  /** visits × crewDays: lateness and dislikes; Infinity where the visit may not be. */
  readonly linear: Float64Array
  /** Windows of all visits one after another, each visit's in order of time. */
  readonly from: Int32Array
  readonly to: Int32Array
  /** visits × groups: first and last window that meets the crew-day; crew-days with the same span share a group. */
  readonly firstWindow: Int32Array
  readonly lastWindow: Int32Array
  readonly group: Int32Array
  readonly groups: number
}

export function dayTables(problem: RoutingProblem): DayTables {
  const { visits, crewDays } = problem
  const keys = new Map<string, number>()
  const edges: Float64Array[] = []
  const edgeOf = Int32Array.from(crewDays, (day) => {
    const key = `${day.distancePrice} ${day.drivePrice}`
    const known = keys.get(key)
    if (known !== undefined) return known
    keys.set(key, edges.length)
    edges.push(priceDrives(problem, day))
    return edges.length - 1
  })
  const spans: Span[] = []
  const spanKeys = new Map<string, number>()
  const group = Int32Array.from(crewDays, (day) => {
    const key = `${day.shift.from} ${day.latestEnd}`
    const known = spanKeys.get(key)
    if (known !== undefined) return known
    spanKeys.set(key, spans.length)
    spans.push({ from: day.shift.from, to: day.latestEnd })
    return spans.length - 1
  })
  const from: number[] = []
  const to: number[] = []
  const firstWindow = new Int32Array(visits.length * spans.length)
  const lastWindow = new Int32Array(visits.length * spans.length).fill(-1)
  visits.forEach((visit, v) => {
    const base = from.length
    const windows = visit.promised ? [visit.promised.start] : [...visit.windows].sort((a, b) => a.from - b.from)
    for (const window of windows) {
      from.push(window.from)
      to.push(window.to)
    }
    spans.forEach((span, g) => {
      const meets = windows.flatMap((window, w) => (window.from <= span.to && window.to >= span.from ? [w] : []))
      firstWindow[v * spans.length + g] = base + (meets[0] ?? 0)
      lastWindow[v * spans.length + g] = meets.length === 0 ? -1 : base + (meets.at(-1) as number)
    })
  })
  const linear = new Float64Array(visits.length * crewDays.length)
  const skills = crewDays.map((day) => new Set(day.skills))
  visits.forEach((visit, v) => {
    const allowed = visit.allowedCrewDays === undefined ? null : new Set(visit.allowedCrewDays)
    const dislikes = new Map<number, number>()
    for (const { crewDay, price } of visit.dislikes ?? []) dislikes.set(crewDay, (dislikes.get(crewDay) ?? 0) + price)
    crewDays.forEach((day, r) => {
      const may =
        (allowed === null || allowed.has(r)) &&
        (lastWindow[v * spans.length + (group[r] as number)] as number) >= 0 &&
        mayDo(visit, day, r, skills[r] as Set<string>)
      linear[v * crewDays.length + r] = may ? latePrice(visit, day) + (dislikes.get(r) ?? 0) : Number.POSITIVE_INFINITY
    })
  })
  return {
    edges,
    edgeOf,
    linear,
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    firstWindow,
    lastWindow,
    group,
    groups: spans.length,
  }
}

/** By a plain loop: with a thousand places this is most of what making a model takes. */
function priceDrives(problem: RoutingProblem, day: CrewDay): Float64Array {
  const { distances, durations } = problem
  const { distancePrice, drivePrice } = day
  const edge = new Float64Array(distances.length)
  for (let i = 0; i < edge.length; i++) edge[i] = (distances[i] as number) * distancePrice + (durations[i] as number) * drivePrice
  return edge
}

function mayDo(visit: RoutedVisit, day: CrewDay, r: number, skilled: ReadonlySet<string>): boolean {
  if (visit.promised !== undefined && visit.promised.crewDay !== r) return false
  if (visit.people > day.people || (visit.releaseDay !== undefined && day.day < visit.releaseDay)) return false
  return visit.skills.every((skill) => skilled.has(skill))
}

/** Lateness of doing a visit on a crew-day. */
export function latePrice(visit: RoutedVisit, day: CrewDay): number {
  if (visit.dueDay === undefined) return 0
  return Math.max(0, day.day - visit.dueDay) * (visit.latePricePerDay ?? 0)
}
