import type { LinkedProblem } from '../../../scripts/bench/dispatch/linked/linked-problem.ts'

interface Part {
  readonly visit: number
  readonly need: number
}

const MUST = 1e6

/**
 * The least total of any plan, found by trying all: every choice of visits left out, every choice of people, every order of each person's parts; times by
 * relaxing all "not before" relations until nothing moves (Bellman and Ford), so that orders which wait for each other in a ring are found out. Shares nothing
 * with the planner.
 */
export function bestLinkedTotal(problem: LinkedProblem): number {
  const parts = problem.visits.flatMap((visit, v) => visit.needs.map((_, n): Part => ({ visit: v, need: n })))
  const orders: number[][] = problem.people.map(() => [])
  let best = Number.POSITIVE_INFINITY
  const place = (k: number, out: ReadonlySet<number>, outPrice: number): void => {
    if (outPrice >= best) return
    const part = parts[k]
    if (part === undefined) {
      best = Math.min(best, outPrice + priceOf(problem, parts, orders))
      return
    }
    if (out.has(part.visit)) {
      place(k + 1, out, outPrice)
      return
    }
    if (part.need === 0) place(k + 1, new Set([...out, part.visit]), outPrice + (problem.visits[part.visit]?.leaveOutPrice ?? MUST))
    problem.people.forEach((person, p) => {
      const order = orders[p] as number[]
      const skill = problem.visits[part.visit]?.needs[part.need]?.skill
      if (typeof skill === 'string' && !person.skills.includes(skill)) return
      if (order.some((other) => parts[other]?.visit === part.visit)) return
      for (let i = 0; i <= order.length; i++) {
        order.splice(i, 0, k)
        place(k + 1, out, outPrice)
        order.splice(i, 1)
      }
    })
  }
  place(0, new Set(), 0)
  return best
}

function priceOf(problem: LinkedProblem, parts: readonly Part[], orders: readonly (readonly number[])[]): number {
  const { visits, people, places, durations, distances, prices } = problem
  const begin = new Array<number>(parts.length).fill(Number.NaN)
  const after: { from: number; to: number; gap: number }[] = []
  const homes: { part: number; gap: number; person: (typeof people)[number] }[] = []
  let distance = 0
  const leg = (a: number, b: number): number => a * places + b
  orders.forEach((order, p) => {
    const person = people[p] as (typeof people)[number]
    order.forEach((k, i) => {
      const visit = visits[(parts[k] as Part).visit] as (typeof visits)[number]
      const here = visit.place as number
      const before = order[i - 1]
      const from = before === undefined ? person.startPlace : (visits[(parts[before] as Part).visit]?.place as number)
      distance += distances[leg(from, here)] as number
      const drive = durations[leg(from, here)] as number
      begin[k] = Math.max(visit.windows[0]?.from as number, before === undefined ? person.shift.from + drive : Number.NEGATIVE_INFINITY)
      if (before !== undefined) after.push({ from: before, to: k, gap: ticksOf(problem, parts[before] as Part) + drive })
    })
    const last = order.at(-1)
    if (last === undefined) return
    const at = leg(visits[(parts[last] as Part).visit]?.place as number, person.endPlace)
    distance += distances[at] as number
    homes.push({ part: last, gap: ticksOf(problem, parts[last] as Part) + (durations[at] as number), person })
  })
  parts.forEach((part, k) => {
    const link = visits[part.visit]?.link
    if (part.need === 0 || link === undefined || Number.isNaN(begin[k])) return
    after.push(
      { from: k - 1, to: k, gap: link.kind === 'after' ? link.least : 0 },
      { from: k, to: k - 1, gap: link.kind === 'after' ? -link.most : 0 },
    )
  })
  for (let pass = 0; ; pass++) {
    let moved = false
    for (const { from, to, gap } of after) {
      const least = (begin[from] as number) + gap
      if (least <= (begin[to] as number)) continue
      begin[to] = least
      moved = true
    }
    if (!moved) break
    if (pass > parts.length) return Number.POSITIVE_INFINITY
  }
  const late = parts.flatMap((part, k) =>
    Number.isNaN(begin[k]) ? [] : [Math.max(0, (begin[k] as number) - (visits[part.visit]?.windows[0]?.to as number))],
  )
  const totalLate = late.reduce((sum, ticks) => sum + ticks, 0)
  if (problem.lateness === 'refused' && totalLate > 0) return Number.POSITIVE_INFINITY
  const overtime = homes.reduce(
    (sum, { part, gap, person }) => sum + Math.max(0, (begin[part] as number) + gap - person.shift.to) * person.overtimePrice,
    0,
  )
  return distance * prices.distance + totalLate * prices.lateTick + Math.max(0, ...late) * prices.mostLate + overtime
}

function ticksOf(problem: LinkedProblem, part: Part): number {
  return problem.visits[part.visit]?.needs[part.need]?.ticks as number
}
