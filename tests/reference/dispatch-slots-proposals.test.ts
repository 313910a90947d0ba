import { applyDifferences } from '@almanac/dispatch/propose/apply-differences'
import type { Board } from '@almanac/dispatch/propose/board'
import { type Proposal, type Proposing, startProposal } from '@almanac/dispatch/propose/propose-plan'
import { seededRandom } from '@almanac/dispatch/search/random'
import { type Mishap, type WhatIf, whatIf } from '@almanac/dispatch/slots/what-if'
import { describe, expect, it } from 'vitest'
import { inventedBoard } from '../support/dispatch/invented-board.ts'
import { board, job, sheet } from '../support/dispatch/two-towns.ts'

const MONDAY = '2026-04-06'

function start(of: Board, seed = 1): Proposing {
  const proposing = startProposal(of, { seed })
  if ('faults' in proposing) throw new Error(proposing.faults.join(' '))
  return proposing
}

function propose(of: Board, iterations: number, seed = 1): Proposal {
  const proposing = start(of, seed)
  proposing.improve(iterations)
  return proposing.proposal()
}

function apply(
  of: Board,
  proposal: Pick<Proposal, 'differences' | 'spots'>,
  ids: readonly string[],
): { board: Board; violations: readonly string[] } {
  const applied = applyDifferences(of, proposal, ids)
  if ('faults' in applied) throw new Error(applied.faults.join(' '))
  return applied
}

const idsOf = (proposal: Proposal): string[] => proposal.differences.map((difference) => difference.id)
const small = (seed: number): Board => inventedBoard(seed, { crews: 3, days: 2, perSheet: 3, waiting: 5 })

describe('a plan proposed', () => {
  it('is worked out by hand: the far job joins the crew that is there, and moves are told apart from placings', () => {
    const sheets = [sheet('A', MONDAY, ['farm job', 'mill job']), sheet('B', MONDAY, ['lake job'])]
    const plain = board(sheets, [job('farm job', 'farm'), job('mill job', 'mill'), job('lake job', 'lake'), job('new', 'lake')])
    // All with one crew: 10 + 15 + 12 + 30 = 67 min instead of 45 + 60. That saves 38 min × 2 = 76: more than 50, less than 100.
    const of = { ...plain, prices: { ...plain.prices, perMove: 100 } }
    const proposal = propose(of, 60)
    expect(propose(plain, 60).differences.filter(({ kind }) => kind === 'move')).toHaveLength(1)
    expect(proposal.differences.map(({ kind, jobId, toSheetId }) => [kind, jobId, toSheetId])).toContainEqual(['place', 'new', 'B'])
    expect(proposal.differences.some(({ kind }) => kind === 'move')).toBe(false)
    expect(proposal.violations).toEqual([])
    expect(proposal.sentences).toContain('Jobs on the sheets rise from 3 to 4.')
    expect(proposal.after.driveMinutes).toBe(45 + 60)
  })

  it('moves a placed job when that saves more than a move costs, and says so', () => {
    const of = board([sheet('A', MONDAY, ['x']), sheet('B', MONDAY, ['y'])], [job('x', 'lake'), job('y', 'lake')])
    // Two drives of 60 min become one: 60 min × 2 people = 120, more than 50.
    const proposal = propose(of, 60)
    expect(proposal.differences.filter(({ kind }) => kind === 'move')).toHaveLength(1)
    expect(proposal.sentences).toContain('Driving falls from 2 h to 1 h.')
    expect(proposal.differences.find(({ kind }) => kind === 'move')?.sentence).toMatch(
      /^Move [xy] from Crew [AB], Monday 2026-04-06, 8:30 to Crew [AB], Monday 2026-04-06, \d+:\d\d\.$/,
    )
  })

  it('passes the checker, keeps every promise, and never costs more than the present plan', () => {
    for (let seed = 1; seed <= 15; seed++) {
      const plain = small(seed)
      const first = propose(plain, 5)
      const promisedId = [...first.spots.keys()].find((id) => first.spots.get(id)?.position === 0) as string
      const spot = first.spots.get(promisedId) as { sheetId: string; startMinute: number }
      const kept = apply(plain, first, idsOf(first)).board
      const promised = { sheetId: spot.sheetId, from: spot.startMinute, to: spot.startMinute + 60 }
      const of = { ...kept, jobs: kept.jobs.map((one) => (one.id === promisedId ? { ...one, promised } : one)) }
      const proposal = propose(of, 20, seed)
      expect(proposal.violations, `seed ${seed}`).toEqual([])
      const now = proposal.spots.get(promisedId)
      expect(now?.sheetId, `seed ${seed}`).toBe(spot.sheetId)
      expect(now?.startMinute).toBeGreaterThanOrEqual(promised.from)
      expect(now?.startMinute).toBeLessThanOrEqual(promised.to)
      expect(proposal.after.price.total, `seed ${seed}`).toBeLessThanOrEqual(proposal.before.price.total + 1e-6)
    }
  })

  it('is the same for the same seed and iterations, in one go or in steps', () => {
    const stepped = start(small(3), 9)
    for (const steps of [1, 4, 10]) {
      stepped.improve(steps)
      stepped.proposal()
    }
    expect(stepped.proposal()).toEqual(propose(small(3), 15, 9))
  })

  it('explains each job that stays waiting', () => {
    const of = board(
      [sheet('A', MONDAY, [])],
      [job('three', 'mill', { people: 3 }), job('lost', null), job('cheap', 'lake', { leaveOutPrice: 5 })],
    )
    const { waiting, notes } = propose(of, 20)
    expect(waiting.map(({ jobId }) => jobId)).toEqual(['three', 'lost', 'cheap'])
    expect(waiting[0]?.why).toMatch(/No crew of 3/)
    expect(waiting[1]?.why).toMatch(/Drive to lost unknown/)
    expect(waiting[2]?.why).toMatch(/could be placed/)
    expect(notes).toHaveLength(1)
  })
})

describe('taking a proposal, all or some', () => {
  it('all of it gives the plan proposed, none of it the board as it was', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const of = small(seed)
      const proposal = propose(of, 15, seed)
      const all = apply(of, proposal, idsOf(proposal))
      expect(all.violations, `seed ${seed}`).toEqual([])
      const spots = new Map(
        all.board.sheets.flatMap((one) => one.visits.map(({ jobId, startMinute }) => [jobId, `${one.id} ${startMinute}`])),
      )
      expect(spots, `seed ${seed}`).toEqual(new Map([...proposal.spots].map(([id, spot]) => [id, `${spot.sheetId} ${spot.startMinute}`])))
      const none = apply(of, proposal, [])
      expect(none.board.sheets.map((one) => one.visits.map(({ jobId }) => jobId))).toEqual(
        of.sheets.map((one) => one.visits.map(({ jobId }) => jobId)),
      )
    }
  })

  it('some of it puts each job where it was told, and what does not go together is named', () => {
    const random = seededRandom(77)
    let named = 0
    for (let seed = 1; seed <= 25; seed++) {
      const of = inventedBoard(seed, { crews: 2, days: 2, perSheet: 6, waiting: 4 })
      const proposal = propose(of, 8, seed)
      const some = idsOf(proposal).filter(() => random.below(2) === 0)
      const applied = apply(of, proposal, some)
      if (applied.violations.length > 0) named++
      for (const difference of proposal.differences) {
        const now = applied.board.sheets.find((one) => one.visits.some(({ jobId }) => jobId === difference.jobId))?.id ?? null
        expect(now, `seed ${seed} ${difference.sentence}`).toBe(
          some.includes(difference.id) ? difference.toSheetId : difference.fromSheetId,
        )
      }
    }
    expect(named).toBeGreaterThan(0)
  })

  it('names what does not go together in plain words, and holds nothing against it that was wrong before', () => {
    // y's window ended before the crew could be there; that is old. z is carried over what the vehicle holds; that is new.
    const y = job('y', 'farm', { windows: [{ date: MONDAY, from: 480, to: 500 }], out: { ft3: 15, lb: 0 } })
    const z = job('z', 'lake', {
      out: { ft3: 15, lb: 0 },
      people: 3,
      windows: [{ date: MONDAY, from: 480, to: 600 }],
      earliest: '2026-04-07',
    })
    const of = board([sheet('A', MONDAY, ['x', 'y'])], [job('x', 'mill'), y, z])
    const spot = { sheetId: 'A', startMinute: 640, position: 2 }
    const difference = {
      id: 'z',
      kind: 'place' as const,
      jobId: 'z',
      fromSheetId: null,
      fromStartMinute: null,
      toSheetId: 'A',
      startMinute: 640,
      sentence: '',
    }
    const applied = apply(of, { differences: [difference], spots: new Map([['z', spot]]) }, ['z'])
    expect(applied.violations).toEqual([
      'Crew A on Monday 2026-04-06: z would begin at 10:37, after 10:00.',
      'Crew A on Monday 2026-04-06: z needs 3 people.',
      'Crew A on Monday 2026-04-06: z may not be done before Tuesday 2026-04-07.',
      'Crew A on Monday 2026-04-06: its vehicle would be 150 % full.',
    ])
    const asWas = apply(of, { differences: [], spots: new Map() }, [])
    expect(asWas.violations).toEqual([])
  })

  it('refuses a change that is not in the proposal', () => {
    const of = small(1)
    expect(applyDifferences(of, propose(of, 2), ['nothing'])).toMatchObject({ faults: [expect.stringMatching(/made anew/)] })
  })
})

describe('a day that breaks', () => {
  const ask = (of: Board, mishap: Mishap, iterations = 30): WhatIf => {
    const answer = whatIf(of, mishap, { seed: 1, iterations })
    if ('faults' in answer) throw new Error(answer.faults.join(' '))
    return answer
  }
  const moved = ({ proposal }: WhatIf): string[] => proposal.differences.filter(({ kind }) => kind === 'move').map(({ jobId }) => jobId)

  it('moves nobody but the stranded when they fit elsewhere', () => {
    const of = board([sheet('A', MONDAY, ['x', 'y']), sheet('B', MONDAY, ['z'])], [job('x', 'mill'), job('y', 'farm'), job('z', 'lake')])
    const answer = ask(of, { kind: 'sheet-off', sheetId: 'A' })
    expect(moved(answer).sort()).toEqual(['x', 'y'])
    // B goes to one of them before the lake: z stays with B, but not at its time.
    expect(answer.proposal.differences.filter(({ kind }) => kind === 'time').map(({ jobId }) => jobId)).toEqual(['z'])
    expect(answer.sentence).toBe(
      'Crew A on Monday 2026-04-06: 2 jobs are stranded, 2 find another place, 0 wait; 0 of the others move, 1 begins at another time.',
    )
    expect(answer.proposal.violations).toEqual([])
  })

  it('strands only what one person alone cannot do', () => {
    const of = board([sheet('A', MONDAY, ['two', 'one']), sheet('B', MONDAY, [])], [job('two', 'mill', { people: 2 }), job('one', 'farm')])
    expect(moved(ask(of, { kind: 'fewer-people', sheetId: 'A', people: 1, skills: [] }))).toEqual(['two'])
  })

  it('takes off what a smaller vehicle cannot carry, and no more', () => {
    const load = (ft3: number) => ({ out: { ft3, lb: ft3 * 50 } })
    const jobs = [job('small', 'mill', load(1)), job('large', 'farm', load(6)), job('middle', 'lake', load(2))]
    const of = board([sheet('A', MONDAY, ['small', 'large', 'middle']), sheet('B', MONDAY, [])], jobs)
    expect(moved(ask(of, { kind: 'other-vehicle', sheetId: 'A', capacity: { ft3: 3, lb: 200 } }))).toEqual(['large'])
  })

  it('keeps the time promised to a customer, with another crew', () => {
    const promised = { sheetId: 'A', from: 600, to: 615 }
    const of = board([sheet('A', MONDAY, ['x']), sheet('B', MONDAY, ['y'])], [job('x', 'mill', { promised }), job('y', 'farm')])
    const { proposal } = ask(of, { kind: 'sheet-off', sheetId: 'A' })
    const spot = proposal.spots.get('x')
    expect(spot?.sheetId).toBe('B')
    expect(spot?.startMinute).toBeGreaterThanOrEqual(600)
    expect(spot?.startMinute).toBeLessThanOrEqual(615)
  })

  it('makes room by moving another when nothing else will do', () => {
    // B alone can do the stranded job for two people and is full; its small job can go to C.
    const long = { minutes: 240 }
    const of = board(
      [sheet('A', MONDAY, ['big']), sheet('B', MONDAY, ['small', 'other big'], { latestEnd: 960 }), sheet('C', MONDAY, [], { people: 1 })],
      [job('big', 'mill', { people: 2, ...long }), job('small', 'mill', long), job('other big', 'mill', { people: 2, minutes: 200 })],
    )
    const answer = ask(of, { kind: 'sheet-off', sheetId: 'A' })
    expect(moved(answer).sort()).toEqual(['big', 'small'])
    expect(answer.proposal.spots.get('big')?.sheetId).toBe('B')
    expect(answer.proposal.spots.get('small')?.sheetId).toBe('C')
    expect(answer.proposal.violations).toEqual([])
  })

  it('says who waits and why when there is no room', () => {
    const of = board([sheet('A', MONDAY, ['x'])], [job('x', 'mill')])
    const { proposal, sentence } = ask(of, { kind: 'sheet-off', sheetId: 'A' })
    expect(sentence).toMatch(/1 job is stranded, 0 find another place, 1 waits/)
    expect(proposal.waiting).toHaveLength(1)
    expect(proposal.differences[0]).toMatchObject({ kind: 'take-off', jobId: 'x' })
  })

  it('always passes the checker, is repeatable, and leaves waiting jobs waiting', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const first = propose(small(seed), 6)
      const of = apply(small(seed), first, idsOf(first)).board
      const on = new Set(of.sheets.flatMap((one) => one.visits.map(({ jobId }) => jobId)))
      const victim = of.sheets.find((one) => one.visits.length > 0)?.id as string
      const answer = ask(of, { kind: 'sheet-off', sheetId: victim }, 10)
      expect(answer.proposal.violations, `seed ${seed}`).toEqual([])
      expect([...answer.proposal.spots.values()].some((spot) => spot.sheetId === victim)).toBe(false)
      expect(
        [...answer.proposal.spots.keys()].every((id) => on.has(id)),
        `seed ${seed}`,
      ).toBe(true)
      expect(ask(of, { kind: 'sheet-off', sheetId: victim }, 10)).toEqual(answer)
    }
  })
})

describe('times that people tell each other', () => {
  it('begin on the five minutes, unless they stand on the sheet already or the day has no room for it', () => {
    let onFives = 0
    let all = 0
    for (let seed = 1; seed <= 8; seed++) {
      const of = small(seed)
      const proposal = propose(of, 60, seed)
      expect(proposal.violations, `seed ${seed}`).toEqual([])
      const written = new Map(of.sheets.flatMap((one) => one.visits.map((visit) => [visit.jobId, visit.startMinute] as const)))
      for (const [jobId, spot] of proposal.spots) {
        if (written.get(jobId) === spot.startMinute) continue
        all++
        if (spot.startMinute % 5 === 0) onFives++
      }
    }
    expect(all).toBeGreaterThan(20)
    expect(onFives / all).toBeGreaterThan(0.9)
  })
})
