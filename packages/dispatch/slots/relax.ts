import type { CrewDay, RoutedVisit } from '../problem/problem.ts'
import type { Sheet } from '../propose/board.ts'
import { dayIndex, toWall } from '../propose/board-clock.ts'
import type { Built } from '../propose/build-problem.ts'
import { sayDay, sayList, sayTime } from '../propose/say.ts'
import { type Gap, gapsFor, type Obstacle, plainObstacle, startAt } from './obstacle.ts'

/** A change that would make room: the words for it, and how much it asks of whom (lower first). */
export interface Relief {
  readonly kind: Obstacle | 'later'
  readonly effort: number
  readonly words: string
}

/** What would make room for the visit on this sheet, given what stands against it; empty: nothing single would. */
export function reliefs(built: Built, sheet: Sheet, r: number, v: number, obstacle: Obstacle): Relief[] {
  const { problem, clock } = built
  const crew = problem.crewDays[r] as CrewDay
  const visit = problem.visits[v] as RoutedVisit
  const others = (built.present[r] ?? []).filter((other) => other !== v)
  const d = dayIndex(clock, sheet.date)
  const on = `${sheet.label} on ${sayDay(sheet.date, built.board)}`
  const attempt = (tryCrew: CrewDay, tryVisit: RoutedVisit, among: readonly number[]): Gap | undefined =>
    plainObstacle(tryCrew, r, tryVisit) === null
      ? gapsFor(
          problem,
          tryCrew,
          among.map((other) => problem.visits[other] as RoutedVisit),
          tryVisit,
        )[0]
      : undefined
  const at = (gap: Gap): string => sayTime(toWall(clock, d, startAt(gap)), built.board)
  const one = (effort: number, gap: Gap | undefined, words: (time: string) => string): Relief[] =>
    gap === undefined ? [] : [{ kind: obstacle, effort, words: words(at(gap)) }]
  if (obstacle === 'people') {
    const more = visit.people - crew.people
    return one(
      2 + more,
      attempt({ ...crew, people: visit.people }, visit, others),
      (time) => `adding ${more === 1 ? 'a person' : `${more} people`} to ${on} would free ${time}`,
    )
  }
  if (obstacle === 'skill') {
    const missing = visit.skills.filter((skill) => !crew.skills.includes(skill))
    return one(
      3,
      attempt({ ...crew, skills: visit.skills }, visit, others),
      (time) => `someone who can do ${sayList(missing)} with ${on} would free ${time}`,
    )
  }
  if (obstacle === 'window') {
    const { promised: _, ...free } = visit
    const anyTime = { ...free, windows: [{ from: crew.shift.from, to: crew.latestEnd }] }
    return one(
      4,
      attempt(crew, anyTime, others),
      (time) => `${sayTime(0, built.board) === time ? 'midnight' : time} with ${on} would do, if the customer agrees`,
    )
  }
  if (obstacle === 'early') {
    const { releaseDay: _, ...ready } = visit
    return one(
      5,
      attempt(crew, ready, others),
      (time) => `having it ready by ${sayDay(sheet.date, built.board)} would free ${time} with ${sheet.label}`,
    )
  }
  if (obstacle === 'load') {
    const light = { ...visit, out: { ft3: 0, lb: 0 }, back: { ft3: 0, lb: 0 } }
    return one(4, attempt(crew, light, others), (time) => `a larger vehicle for ${on} would free ${time}`)
  }
  if (obstacle !== 'time') return []
  const moves = others.flatMap((gone) => {
    const other = problem.visits[gone] as RoutedVisit
    if (other.promised !== undefined) return []
    const label = built.jobs[gone]?.label ?? other.id
    return one(
      1 + other.serviceTicks / 1e6,
      attempt(
        crew,
        visit,
        others.filter((kept) => kept !== gone),
      ),
      (time) => `moving ${label} off ${on} would free ${time}`,
    )
  })
  const longer = { ...crew, latestEnd: crew.latestEnd + 6 * 3600 }
  const gap = attempt(longer, visit, others)
  const later =
    gap === undefined
      ? []
      : [
          {
            kind: 'later' as const,
            effort: 3.5,
            words: `letting ${sheet.label} work until ${sayTime(toWall(clock, d, gap.timed.day.end), built.board)} on ${sayDay(sheet.date, built.board)} would make room`,
          },
        ]
  return [...moves, ...later]
}
