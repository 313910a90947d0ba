import type { RoutingProblem } from '../problem/problem.ts'
import { type DayTables, dayTables } from './day-tables.ts'

/**
 * The problem as flat arrays. A node is a visit (0…n−1), the start of crew-day r (n + r) or its end (n + days + r).
 * `uniform` says that all crew-days are alike and each visit has one window, so that a route's lateness can be joined from stored pieces in constant time;
 * otherwise a route is walked, with all that a firm's day has.
 */
export interface Model {
  readonly problem: RoutingProblem
  readonly visits: number
  readonly days: number
  readonly nodes: number
  readonly uniform: boolean
  readonly place: Int32Array
  /** place × places: a node's row in the tables. */
  readonly row: Int32Array
  readonly duration: Int32Array
  /** Price of a drive on the first crew-day's prices; the only one when uniform. */
  readonly edge: Float64Array
  readonly service: Int32Array
  /** One window a node: the visit's first, the crew-day's whole span for its ends. */
  readonly open: Int32Array
  readonly close: Int32Array
  readonly demand: Float64Array
  readonly capacity: number
  /** Never left out while searching. Where crew-days differ none is: so days with too much work still have plans without faults. */
  readonly required: Uint8Array
  /** Price of leaving a visit out; for one that must be planned, more than any plan costs. */
  readonly leaveOut: Float64Array
  readonly table: DayTables
}

export function buildModel(problem: RoutingProblem): Model {
  const { places } = problem
  const visits = problem.visits.length
  const days = problem.crewDays.length
  const nodes = visits + 2 * days
  const table = dayTables(problem)
  const place = new Int32Array(nodes)
  const row = new Int32Array(nodes)
  const service = new Int32Array(nodes)
  const open = new Int32Array(nodes)
  const close = new Int32Array(nodes)
  const demand = new Float64Array(nodes)
  problem.visits.forEach((visit, v) => {
    place[v] = visit.place
    service[v] = visit.serviceTicks
    open[v] = visit.promised?.start.from ?? visit.windows[0]?.from ?? 0
    close[v] = visit.promised?.start.to ?? visit.windows[0]?.to ?? 0
    demand[v] = visit.out.ft3
  })
  problem.crewDays.forEach((day, r) => {
    place[visits + r] = day.startPlace
    place[visits + days + r] = day.endPlace
    for (const node of [visits + r, visits + days + r]) {
      open[node] = day.shift.from
      close[node] = day.latestEnd
    }
  })
  for (let node = 0; node < nodes; node++) row[node] = (place[node] as number) * places
  const ticks = new Int32Array(places * places)
  ticks.set(problem.durations)
  const must = mustPrice(problem, table)
  const uniform = isUniform(problem)
  return {
    problem,
    visits,
    days,
    nodes,
    uniform,
    place,
    row,
    duration: ticks,
    edge: table.edges[0] ?? new Float64Array(places * places),
    service,
    open,
    close,
    demand,
    capacity: problem.crewDays[0]?.capacity.ft3 ?? 0,
    required: Uint8Array.from(problem.visits, (visit) => (uniform && visit.leaveOutPrice === undefined ? 1 : 0)),
    leaveOut: Float64Array.from(problem.visits, (visit) => (visit.promised ? 10 * must : (visit.leaveOutPrice ?? must))),
    table,
  }
}

/** More than any plan of the others could save. */
function mustPrice(problem: RoutingProblem, table: DayTables): number {
  let dearest = 1
  for (const edge of table.edges) for (let i = 0; i < edge.length; i++) dearest = Math.max(dearest, edge[i] as number)
  let sum = dearest * 2
  for (const visit of problem.visits) sum = Math.max(sum, visit.leaveOutPrice ?? 0, visit.stands?.price ?? 0)
  for (let i = 0; i < table.linear.length; i++) {
    const price = table.linear[i] as number
    if (price < Number.POSITIVE_INFINITY && price > sum) sum = price
  }
  for (const day of problem.crewDays) {
    const over = Math.max(0, day.latestEnd - day.shift.to) * day.overtimePrice
    const soft = (day.unfairPrice ?? 0) + (day.reserve?.price ?? 0)
    sum = Math.max(sum, over + day.sendPrice + soft * Math.max(0, day.latestEnd - day.shift.from))
  }
  return 10 * sum
}

function isUniform(problem: RoutingProblem): boolean {
  const first = problem.crewDays[0]
  if (first === undefined) return false
  const alike = problem.crewDays.every(
    (day) =>
      day.day === first.day &&
      day.startPlace === first.startPlace &&
      day.endPlace === first.startPlace &&
      day.shift.from === first.shift.from &&
      day.latestEnd === first.latestEnd &&
      day.shift.to >= day.latestEnd &&
      day.pauses.length === 0 &&
      (day.rush ?? []).length === 0 &&
      day.capacity.ft3 === first.capacity.ft3 &&
      day.distancePrice === first.distancePrice &&
      day.drivePrice === first.drivePrice &&
      day.sendPrice === 0 &&
      day.fairShareTicks === undefined &&
      day.reserve === undefined,
  )
  const fewest = Math.min(...problem.crewDays.map((day) => day.people))
  return (
    alike &&
    problem.visits.every(
      (visit) =>
        visit.windows.length === 1 &&
        visit.out.lb === 0 &&
        visit.back.ft3 === 0 &&
        visit.back.lb === 0 &&
        visit.skills.length === 0 &&
        visit.people <= fewest &&
        visit.allowedCrewDays === undefined &&
        visit.promised === undefined &&
        visit.dislikes === undefined &&
        visit.stands === undefined &&
        visit.releaseDay === undefined &&
        visit.dueDay === undefined,
    )
  )
}
