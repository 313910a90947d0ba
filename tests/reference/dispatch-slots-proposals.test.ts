import { applyDifferences } from '@almanac/dispatch/propose/apply-differences'
import { seededRandom } from '@almanac/dispatch/search/random'
import { describe, expect, it } from 'vitest'
import { inventedBoard } from '../support/dispatch/invented-board.ts'
import { apply, idsOf, propose, small, start } from '../support/dispatch/proposing.ts'
import { board, job, sheet } from '../support/dispatch/two-towns.ts'

const MONDAY = '2026-04-06'

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
      /^Move [xy] from Crew [AB], Monday, April 6, 8:30\u00a0AM to Crew [AB], Monday, April 6, \d+:\d\d\u00a0[AP]M\.$/,
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
      'Crew A on Monday, April 6: z would begin at 10:37\u00a0AM, after 10:00\u00a0AM.',
      'Crew A on Monday, April 6: z needs 3 people.',
      'Crew A on Monday, April 6: z may not be done before Tuesday, April 7.',
      'Crew A on Monday, April 6: its vehicle would be 150% full.',
    ])
    const asWas = apply(of, { differences: [], spots: new Map() }, [])
    expect(asWas.violations).toEqual([])
  })

  it('refuses a change that is not in the proposal', () => {
    const of = small(1)
    expect(applyDifferences(of, propose(of, 2), ['nothing'])).toMatchObject({ faults: [expect.stringMatching(/made again/)] })
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
