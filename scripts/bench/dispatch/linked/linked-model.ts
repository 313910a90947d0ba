import type { LinkedProblem } from './linked-problem.ts'

/**
 * The problem as flat arrays. An op is one person's part of a visit. A token is what stands in the common order: a visit with all its parts, or for
 * parts that follow each other one token each, so that others' work may come between.
 */
export interface LinkedModel {
  readonly problem: LinkedProblem
  readonly ops: number
  readonly tokens: number
  readonly people: number
  readonly opVisit: Int32Array
  readonly opNeed: Int32Array
  readonly ticks: Float64Array
  /** Who can do an op, as indexes, and the same as ops × people. */
  readonly able: readonly Int32Array[]
  readonly can: Uint8Array
  readonly firstOp: Int32Array
  readonly opCount: Int32Array
  /** Token of the other part for parts that follow each other, else −1; `isSecond` marks the later one. */
  readonly mate: Int32Array
  readonly isSecond: Uint8Array
  readonly least: Float64Array
  readonly most: Float64Array
  /** Row of the travel tables of a token, −1 for wherever the person is. */
  readonly place: Int32Array
  /** Windows of all visits one after another, and each token's first and last among them. */
  readonly windowFrom: Float64Array
  readonly windowTo: Float64Array
  readonly windowFirst: Int32Array
  readonly windowLast: Int32Array
  readonly visitTokens: readonly Int32Array[]
  readonly visitOps: readonly Int32Array[]
  /** Other visits by nearness in place and time, nearest first. */
  readonly near: readonly Int32Array[]
  readonly durations: Float64Array
  readonly distances: Float64Array
  readonly leaveOut: Float64Array
}

const NEAR = 12

export function buildLinkedModel(problem: LinkedProblem): LinkedModel {
  const { visits, people } = problem
  const opVisit: number[] = []
  const opNeed: number[] = []
  const ticks: number[] = []
  const able: Int32Array[] = []
  const firstOp: number[] = []
  const opCount: number[] = []
  const mate: number[] = []
  const isSecond: number[] = []
  const tokenVisit: number[] = []
  const visitTokens: Int32Array[] = []
  const visitOps: Int32Array[] = []
  visits.forEach((visit, v) => {
    const ops = visit.needs.map((need, n) => {
      opVisit.push(v)
      opNeed.push(n)
      ticks.push(need.ticks)
      const skill = need.skill
      const open = visit.windows.length > 0
      able.push(Int32Array.from(people.flatMap((person, p) => (open && (skill === null || person.skills.includes(skill)) ? [p] : []))))
      return opVisit.length - 1
    })
    visitOps.push(Int32Array.from(ops))
    const token = firstOp.length
    const split = visit.link?.kind === 'after'
    for (let n = 0; n < (split ? 2 : 1); n++) {
      firstOp.push((ops[0] as number) + n)
      opCount.push(split ? 1 : ops.length)
      mate.push(split ? token + 1 - n : -1)
      isSecond.push(n)
      tokenVisit.push(v)
    }
    visitTokens.push(Int32Array.from(split ? [token, token + 1] : [token]))
  })
  const can = new Uint8Array(opVisit.length * people.length)
  able.forEach((list, op) => {
    for (const p of list) can[op * people.length + p] = 1
  })
  const of = <T>(pick: (v: number) => T): T[] => tokenVisit.map(pick)
  const windows = visits.map((visit) => [...visit.windows].sort((a, b) => a.from - b.from))
  return {
    problem,
    ops: opVisit.length,
    tokens: firstOp.length,
    people: people.length,
    opVisit: Int32Array.from(opVisit),
    opNeed: Int32Array.from(opNeed),
    ticks: Float64Array.from(ticks),
    able,
    can,
    firstOp: Int32Array.from(firstOp),
    opCount: Int32Array.from(opCount),
    mate: Int32Array.from(mate),
    isSecond: Uint8Array.from(isSecond),
    least: Float64Array.from(of((v) => linkOf(problem, v).least)),
    most: Float64Array.from(of((v) => linkOf(problem, v).most)),
    place: Int32Array.from(of((v) => visits[v]?.place ?? -1)),
    windowFrom: Float64Array.from(windows.flat(), (window) => window.from),
    windowTo: Float64Array.from(windows.flat(), (window) => window.to),
    windowFirst: Int32Array.from(of((v) => windows.slice(0, v).flat().length)),
    windowLast: Int32Array.from(of((v) => windows.slice(0, v + 1).flat().length - 1)),
    visitTokens,
    visitOps,
    near: nearVisits(problem),
    durations: Float64Array.from(problem.durations),
    distances: Float64Array.from(problem.distances),
    leaveOut: leaveOutPrices(problem),
  }
}

function linkOf(problem: LinkedProblem, v: number): { least: number; most: number } {
  const link = problem.visits[v]?.link
  return link?.kind === 'after' ? link : { least: 0, most: 0 }
}

/** For a visit that must be planned: more than any plan costs, or it would be left out to save a drive. */
function leaveOutPrices(problem: LinkedProblem): Float64Array {
  let longest = 1
  for (let i = 0; i < problem.distances.length; i++) longest = Math.max(longest, problem.distances[i] as number)
  const { distance, lateTick, mostLate } = problem.prices
  const usual = longest * (distance + lateTick + mostLate) * 1000 * (problem.visits.length + 1)
  const highest = Math.max(0, ...problem.visits.map((visit) => visit.leaveOutPrice ?? 0))
  return Float64Array.from(problem.visits, (visit) => visit.leaveOutPrice ?? usual + 1000 * highest)
}

function nearVisits(problem: LinkedProblem): Int32Array[] {
  const { visits, places, durations } = problem
  const middle = visits.map((visit) => visit.windows.reduce((sum, w) => sum + (w.from + w.to) / 2, 0) / Math.max(1, visit.windows.length))
  return visits.map((visit, v) => {
    const far = visits.map((other, w) => {
      const drive = visit.place === null || other.place === null ? 0 : (durations[visit.place * places + other.place] as number)
      return drive + 0.25 * Math.abs((middle[v] as number) - (middle[w] as number))
    })
    const others = visits.flatMap((_, w) => (w === v ? [] : [w]))
    return Int32Array.from(others.sort((a, b) => (far[a] as number) - (far[b] as number) || a - b).slice(0, NEAR))
  })
}
