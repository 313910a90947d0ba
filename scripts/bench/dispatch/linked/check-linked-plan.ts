import type { LinkedPlan, LinkedProblem } from './linked-problem.ts'

/** What a plan does wrong, for a person to read. */
export interface LinkedViolation {
  readonly kind: 'missing' | 'twice' | 'skill' | 'window' | 'drive' | 'together' | 'after' | 'same-person' | 'length' | 'home' | 'figures'
  readonly sentence: string
}

/** Times are sums of table entries; the plan and the checker add them in different orders. */
const NEAR = 1e-6

/** Checks a plan against its problem from the start times alone and adds up its figures afresh. Shares nothing with the search but the types. */
export function checkLinkedPlan(problem: LinkedProblem, plan: LinkedPlan): LinkedViolation[] {
  const found: LinkedViolation[] = []
  const say = (kind: LinkedViolation['kind'], sentence: string): void => void found.push({ kind, sentence })
  const starts = new Map<string, { start: number; person: number }>()
  let distance = 0
  let overtimePrice = 0
  problem.people.forEach((person, p) => {
    let at = person.startPlace
    let free = person.shift.from
    const parts = plan.people[p] ?? []
    for (const part of parts) {
      const visit = problem.visits[part.visit]
      const need = visit?.needs[part.need]
      if (visit === undefined || need === undefined) {
        say('missing', `${person.id} is sent to a visit that does not exist.`)
        continue
      }
      const key = `${part.visit}/${part.need}`
      if (starts.has(key)) say('twice', `Part ${part.need + 1} of ${visit.id} is done twice.`)
      starts.set(key, { start: part.start, person: p })
      if (need.skill !== null && !person.skills.includes(need.skill)) say('skill', `${person.id} cannot do ${need.skill} at ${visit.id}.`)
      if (Math.abs(part.end - part.start - need.ticks) > NEAR)
        say('length', `${person.id} at ${visit.id}: the time given is not the work's.`)
      if (visit.place !== null) {
        const leg = at * problem.places + visit.place
        free += problem.durations[leg] as number
        distance += problem.distances[leg] as number
        at = visit.place
      }
      // Written so that a time that is no number fails too.
      if (!(part.start >= free - NEAR)) say('drive', `${person.id} cannot be at ${visit.id} at ${part.start}: the drive ends at ${free}.`)
      free = part.start + need.ticks
    }
    if (parts.length === 0) return
    const leg = at * problem.places + person.endPlace
    const home = free + (problem.durations[leg] as number)
    distance += problem.distances[leg] as number
    if (person.latestEnd !== undefined && home > person.latestEnd + NEAR)
      say('home', `${person.id} is back at ${home}, after ${person.latestEnd}.`)
    overtimePrice += Math.max(0, home - person.shift.to) * person.overtimePrice
  })
  const late = problem.visits.flatMap((_, v) => checkVisit(problem, plan, v, starts, say))
  const totalLate = late.reduce((sum, ticks) => sum + ticks, 0)
  const mostLate = Math.max(0, ...late)
  const leftOutPrice = plan.leftOut.reduce((sum, v) => sum + (problem.visits[v]?.leaveOutPrice ?? 0), 0)
  const { prices } = problem
  const total = distance * prices.distance + totalLate * prices.lateTick + mostLate * prices.mostLate + overtimePrice + leftOutPrice
  const figures = { distance, totalLate, mostLate, overtimePrice, leftOutPrice, total }
  for (const [name, value] of Object.entries(figures)) {
    const told = plan[name as keyof typeof figures]
    if (!(Math.abs(told - value) <= NEAR * Math.max(1, Math.abs(value)))) say('figures', `The plan says ${name} ${told}; it is ${value}.`)
  }
  return found
}

/** One visit: whole or left out, in a window or late as allowed, its link kept. Answers the lateness of its parts. */
function checkVisit(
  problem: LinkedProblem,
  plan: LinkedPlan,
  v: number,
  starts: ReadonlyMap<string, { start: number; person: number }>,
  say: (kind: LinkedViolation['kind'], sentence: string) => void,
): number[] {
  const visit = problem.visits[v] as LinkedProblem['visits'][number]
  const parts = visit.needs.flatMap((_, n) => starts.get(`${v}/${n}`) ?? [])
  if (plan.leftOut.includes(v)) {
    if (parts.length > 0) say('twice', `${visit.id} is planned and left out at once.`)
    if (visit.leaveOutPrice === undefined) say('missing', `${visit.id} must be planned and is left out.`)
    return []
  }
  if (parts.length < visit.needs.length) {
    say('missing', `${visit.id} has ${parts.length} of its ${visit.needs.length} parts.`)
    return []
  }
  if (new Set(parts.map((part) => part.person)).size < parts.length) say('same-person', `One person does two parts of ${visit.id}.`)
  const begun = parts.map((part) => part.start)
  if (visit.link?.kind === 'together' && Math.max(...begun) - Math.min(...begun) > NEAR)
    say('together', `${visit.id} does not begin together.`)
  if (visit.link?.kind === 'after') {
    const gap = (begun[1] as number) - (begun[0] as number)
    if (!(gap >= visit.link.least - NEAR && gap <= visit.link.most + NEAR))
      say('after', `${visit.id}: the second part begins ${gap} after the first.`)
  }
  return begun.map((start) =>
    latenessOf(visit.windows, start, () => say('window', `${visit.id} begins at ${start}, outside its windows.`), problem.lateness),
  )
}

function latenessOf(
  windows: readonly { from: number; to: number }[],
  start: number,
  outside: () => void,
  lateness: LinkedProblem['lateness'],
): number {
  const last = Math.max(...windows.map((window) => window.to))
  if (windows.some((window) => start >= window.from - NEAR && start <= window.to + NEAR)) return Math.max(0, start - last)
  if (start > last && lateness === 'priced') return start - last
  outside()
  return 0
}
