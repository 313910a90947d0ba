import type { BoardJob } from '@almanac/dispatch/propose/board'
import { allDivisions } from '@almanac/dispatch/propose/divide-hands'
import { type CrewDayToForm, formCrews, type Hand, skillKey } from '@almanac/dispatch/propose/form-crews'
import { expect, test } from 'vitest'
import { board, job as jobAt } from '../support/dispatch/two-towns.ts'

// Each answer is seen by eye from who can do what; no figure comes from the planner.

const DATE = '2026-12-03'
const job = (id: string, changes: Partial<BoardJob> = {}) => jobAt(id, 'mill', changes)
const hand = (id: string): Hand => ({ id, shift: { from: 480, to: 960 }, breaks: [], home: null, overtimePerHour: null })
const van = (id: string) => ({ id, capacity: { ft3: 60, lb: 1500 } })
/** A day of these people, vehicles and jobs; `can` are the skills of one person. */
function day(hands: string[], vans: number, jobs: BoardJob[], can: Record<string, string[]> = {}): CrewDayToForm {
  const of = (ids: string[]) => [...new Set(ids.flatMap((id) => can[id] ?? []))]
  const sets = hands.flatMap((a) => [[a], ...hands.filter((b) => b > a).map((b) => [a, b])])
  return {
    board: board([], jobs, { days: [{ date: DATE, minutesInDay: 1440 }] }),
    date: DATE,
    yard: 'yard',
    hands: hands.map(hand),
    vans: Array.from({ length: vans }, (_, i) => van(`van ${i + 1}`)),
    skills: Object.fromEntries(sets.map((ids) => [skillKey(ids), of(ids)])),
    inHandMinutes: 0,
    overtimeMinutes: 0,
  }
}
function form(of: CrewDayToForm) {
  const formed = formCrews(of, { seed: 1, most: 300 })
  if ('faults' in formed) throw new Error(formed.faults.join(' '))
  return formed
}
const crewsOf = (of: CrewDayToForm) =>
  form(of)
    .crews.map((crew) => crew.handIds.join('+'))
    .sort()

// Matchings of a set are counted by the telephone numbers (OEIS A000085): 1, 2, 4, 10, 26, 76; with a vehicle for everybody nobody is spare.
test.each([
  [1, 1],
  [2, 2],
  [3, 4],
  [4, 10],
  [5, 26],
  [6, 76],
])('%i people with a vehicle each are divided in %i ways', (people, ways) => {
  expect(allDivisions(people, people)).toHaveLength(ways)
})

test('two rebeds for two people and two small jobs: one pair, and one alone for each small job', () => {
  const jobs = [
    job('r1', { people: 2, minutes: 200 }),
    job('r2', { people: 2, minutes: 200 }),
    job('a', { minutes: 400 }),
    job('b', { minutes: 400 }),
  ]
  const formed = form(day(['ana', 'ben', 'cy', 'dee'], 4, jobs))
  expect(formed.crews.map((crew) => crew.handIds.length).sort()).toEqual([1, 1, 2])
  expect(formed.after.waiting).toBe(0)
  // Alone nobody can do a rebed.
  expect(formed.alone.waiting).toBe(2)
})

test('only small jobs, as many as people: everybody alone', () => {
  const jobs = ['a', 'b', 'c'].map((id) => job(id, { minutes: 420 }))
  expect(crewsOf(day(['ana', 'ben', 'cy'], 3, jobs))).toEqual(['ana', 'ben', 'cy'])
})

test('who alone knows a valve goes with whoever alone may lift, where one job asks for both', () => {
  const jobs = [job('r', { people: 2, skills: ['valve', 'lift'], minutes: 300 })]
  const can = { ana: ['valve'], ben: [], cy: [], dee: ['lift'] }
  expect(crewsOf(day(['ana', 'ben', 'cy', 'dee'], 2, jobs, can))).toContain('ana+dee')
})

test('fewer vehicles than people: nobody goes without one, and the spare are named', () => {
  const jobs = ['a', 'b', 'c'].map((id) => job(id, { minutes: 200 }))
  const formed = form(day(['ana', 'ben', 'cy', 'dee', 'eve'], 2, jobs))
  expect(formed.crews).toHaveLength(2)
  expect(new Set(formed.crews.map((crew) => crew.vanId)).size).toBe(2)
  const all = [...formed.crews.flatMap((crew) => crew.handIds), ...formed.spareIds]
  expect([...all].sort()).toEqual(['ana', 'ben', 'cy', 'dee', 'eve'])
})

test('eight people, too many to try each: no worse than eight alone, and the rebeds are placed', () => {
  const jobs = [
    ...['r1', 'r2', 'r3'].map((id) => job(id, { people: 2, minutes: 420 })),
    ...['a', 'b'].map((id) => job(id, { minutes: 420 })),
  ]
  const of = day(['a1', 'a2', 'a3', 'a4', 'a5', 'a6', 'a7', 'a8'], 8, jobs)
  expect(allDivisions(8, 8)).toBeNull()
  const formed = form(of)
  expect(formed.after.waiting).toBe(0)
  expect(formed.after.price.total).toBeLessThan(formed.alone.price.total)
})

test('the same day, seed and number of ways give the same crews', () => {
  const jobs = [job('r1', { people: 2, minutes: 200 }), job('a', { minutes: 300 })]
  const of = day(['ana', 'ben', 'cy'], 3, jobs)
  expect(form(of)).toEqual(form(of))
})
