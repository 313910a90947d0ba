import { describe, expect, it } from 'vitest'
import { type CrewsFormed, type CrewsWanted, type PersonDay, startFormingCrews } from '../../scripts/bench/dispatch/linked/form-crews.ts'
import { inventedBoard } from '../support/dispatch/invented-board.ts'
import { job, smallTravel } from '../support/dispatch/two-towns.ts'

const MONDAY = '2026-04-06'
const prices = { perDriveHour: 60, perMile: 0, overtimePerHour: 120, leaveOut: 10_000 }

function person(id: string, changes: Partial<PersonDay> = {}): PersonDay {
  const usual = {
    date: MONDAY,
    skills: [],
    shift: { from: 480, to: 960 },
    latestEnd: 1020,
    breaks: [],
    startPlace: 'yard',
    endPlace: 'yard',
  }
  return { id, label: id, ...usual, ...changes }
}

function form(wanted: CrewsWanted, iterations: number): CrewsFormed {
  const forming = startFormingCrews(wanted, { seed: 1 })
  if ('faults' in forming) throw new Error(forming.faults.join(' '))
  forming.improve(iterations)
  return forming.crews()
}

function wanted(people: readonly PersonDay[], jobs: CrewsWanted['jobs']): CrewsWanted {
  return { locale: 'en-US', unitSystem: 'us', days: [{ date: MONDAY, minutesInDay: 1440 }], people, jobs, travel: smallTravel(), prices }
}

describe('crews formed by the planner', () => {
  it('lets people meet where two are needed and part where one is enough', () => {
    // Two 4-hour jobs for one, then one of 2 hours for two: a fixed crew of two would need 10 hours and more.
    const jobs = [
      job('one', 'mill', { minutes: 240 }),
      job('other', 'farm', { minutes: 240 }),
      job('both', 'lake', { people: 2, minutes: 120 }),
    ]
    const formed = form(wanted([person('Ina'), person('Ole')], jobs), 20_000)
    expect(formed.waiting).toEqual([])
    expect(formed.violations).toEqual([])
    expect(formed.crews.map((crew) => crew.personDayIds.length).sort()).toEqual([1, 1, 2])
    expect(formed.crews.find((crew) => crew.jobId === 'both')?.personDayIds).toEqual(['Ina', 'Ole'])
  })

  it('shares a job’s skills out over its people', () => {
    const people = [person('Ina', { skills: ['gas'] }), person('Ole', { skills: ['old valves'] }), person('Pia')]
    const formed = form(wanted(people, [job('x', 'mill', { people: 2, skills: ['gas', 'old valves'] })]), 3000)
    expect(formed.crews[0]?.personDayIds).toEqual(['Ina', 'Ole'])
    expect(formed.crews[0]?.sentence).toBe('x: Ina and Ole, Monday, April 6, 8:10\u00a0AM.')
    // For one person both skills must be one person's.
    expect(form(wanted(people, [job('x', 'mill', { skills: ['gas', 'old valves'] })]), 3000).waiting).toEqual(['x'])
  })

  it('keeps breaks, windows, the first day, and the end of the day', () => {
    const lunch = { from: 690, to: 720, minutes: 60 }
    const jobs = [job('long', 'mill', { minutes: 200 }), job('late', 'mill', { windows: [{ date: MONDAY, from: 760, to: 780 }] })]
    const formed = form(wanted([person('Ina', { breaks: [lunch] })], jobs), 5000)
    expect(formed.violations).toEqual([])
    // 8:10–11:30, break 11:30–12:30, and the window opens at 12:40.
    expect(formed.crews.map((crew) => [crew.jobId, crew.startMinute])).toEqual([
      ['long', 490],
      ['late', 760],
    ])
    expect(form(wanted([person('Ina')], [job('x', 'mill', { earliest: '2026-04-07' })]), 1000).waiting).toEqual(['x'])
    expect(form(wanted([person('Ina')], [job('x', 'mill', { minutes: 521 })]), 1000).waiting).toEqual(['x'])
    expect(form(wanted([person('Ina')], [job('x', 'mill', { minutes: 520 })]), 1000).waiting).toEqual([])
  })

  it('passes its checker and is repeatable on invented weeks', () => {
    for (let seed = 1; seed <= 4; seed++) {
      const board = inventedBoard(seed, { crews: 2, days: 2, perSheet: 3, waiting: 4 })
      const people = board.days.flatMap(({ date }) =>
        Array.from({ length: 4 }, (_, p) =>
          person(`${date} ${p}`, { date, skills: p % 2 === 0 ? ['old valves'] : [], breaks: [{ from: 690, to: 780, minutes: 30 }] }),
        ),
      )
      const week: CrewsWanted = {
        locale: 'en-US',
        unitSystem: 'us',
        days: board.days,
        people,
        jobs: board.jobs,
        travel: board.travel,
        prices: { ...board.prices },
      }
      const formed = form(week, 15_000)
      expect(formed.violations, `seed ${seed}`).toEqual([])
      for (const crew of formed.crews) {
        expect(crew.personDayIds).toHaveLength(board.jobs.find((one) => one.id === crew.jobId)?.people ?? 0)
        expect(new Set(crew.personDayIds.map((id) => id.split(' ')[0])).size, `seed ${seed}: one day`).toBe(1)
      }
      expect(form(week, 15_000)).toEqual(formed)
    }
  })

  it('tells what it cannot work with', () => {
    expect(startFormingCrews(wanted([person('Ina', { date: '2026-05-01' })], []), { seed: 1 })).toEqual({
      faults: ['Ina works on a day or from a place that is not given.'],
    })
    const formed = form(wanted([person('Ina')], [job('lost', null)]), 10)
    expect(formed).toMatchObject({ waiting: ['lost'], notes: ['Drive to lost unknown: set its pin on the map, then it can be planned.'] })
  })
})
