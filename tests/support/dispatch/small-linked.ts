import { seededRandom } from '../../../packages/dispatch/search/random.ts'
import type { LinkedProblem, LinkedVisit } from '../../../scripts/bench/dispatch/linked/linked-problem.ts'

/** A small problem with linked visits, from its seed alone: 4 visits, 3 people, skills, windows, some links; small enough to try every plan. */
export function smallLinked(seed: number): LinkedProblem {
  const random = seededRandom(seed)
  const visits = 4
  const points = Array.from({ length: visits + 1 }, () => ({ x: random.below(60), y: random.below(60) }))
  const table = points.flatMap((a) => points.map((b) => Math.round(Math.hypot(a.x - b.x, a.y - b.y))))
  const skills = ['rebed', 'valve', 'lift']
  const people = Array.from({ length: 3 }, (_, p) => ({
    id: `person ${p}`,
    // Someone for each skill, and more by chance.
    skills: skills.filter((_, s) => s === p || random.below(2) === 0),
    startPlace: 0,
    endPlace: 0,
    shift: { from: 0, to: 120 + random.below(120) },
    overtimePrice: random.below(3) / 2,
  }))
  let pairs = 0
  const list = Array.from({ length: visits }, (_, v): LinkedVisit => {
    const from = random.below(150)
    const base = {
      id: `visit ${v}`,
      place: v + 1,
      windows: [{ from, to: from + 20 + random.below(80) }],
      ...(random.below(4) === 0 ? { leaveOutPrice: 20 + random.below(60) } : {}),
    }
    const need = (): { skill: string | null; ticks: number } => ({ skill: skills[random.below(4)] ?? null, ticks: 5 + random.below(25) })
    const kind = pairs < 2 ? random.below(3) : 0
    if (kind === 0) return { ...base, needs: [need()] }
    pairs++
    const first = random.below(skills.length)
    const needs = [
      { skill: skills[first] as string, ticks: 5 + random.below(25) },
      { skill: skills[(first + 1) % 3] as string, ticks: 5 + random.below(25) },
    ]
    if (kind === 1) return { ...base, needs, link: { kind: 'together' } }
    const least = random.below(30)
    return { ...base, needs, link: { kind: 'after', least, most: least + random.below(60) } }
  })
  const prices = { distance: 1, lateTick: 1 + random.below(2), mostLate: random.below(2) }
  return {
    visits: list,
    people,
    places: visits + 1,
    durations: table,
    distances: table,
    prices,
    lateness: random.below(3) === 0 ? 'refused' : 'priced',
  }
}
