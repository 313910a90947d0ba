import type { Board } from '@almanac/dispatch/propose/board'
import { type CrewDisruption, type SheetWhatIf, whatIf } from '@almanac/dispatch/slots/what-if'
import { describe, expect, it } from 'vitest'
import { apply, idsOf, propose, small } from '../support/dispatch/proposing.ts'
import { board, job, sheet } from '../support/dispatch/two-towns.ts'

const MONDAY = '2026-04-06'

describe('a day that breaks', () => {
  const ask = (of: Board, mishap: CrewDisruption, iterations = 30): SheetWhatIf => {
    const answer = whatIf(of, mishap, { seed: 1, iterations })
    if ('faults' in answer) throw new Error(answer.faults.join(' '))
    return answer
  }
  const moved = ({ proposal }: SheetWhatIf): string[] =>
    proposal.differences.filter(({ kind }) => kind === 'move').map(({ jobId }) => jobId)

  it('moves nobody but the stranded when they fit elsewhere', () => {
    const of = board([sheet('A', MONDAY, ['x', 'y']), sheet('B', MONDAY, ['z'])], [job('x', 'mill'), job('y', 'farm'), job('z', 'lake')])
    const answer = ask(of, { kind: 'sheet-off', sheetId: 'A' })
    expect(moved(answer).sort()).toEqual(['x', 'y'])
    // B goes to one of them before the lake: z stays with B, but not at its time.
    expect(answer.proposal.differences.filter(({ kind }) => kind === 'time').map(({ jobId }) => jobId)).toEqual(['z'])
    expect(answer.sentence).toBe(
      'Crew A on Monday, April 6: 2 jobs are stranded, 2 find another place, 0 wait; 0 of the others move, 1 begins at another time.',
    )
    expect(answer.proposal.violations).toEqual([])
  })

  it.each([
    ['the others keep their times where another order drives no less', 20, 490],
    ['at no price the stranded one goes first', 0, 550],
  ])('%s', (_, perRetime, start) => {
    // Both at the mill: yard, mill, mill, yard is 20 min in either order. y stands at 8:10; x before it would put it to 9:10.
    const y = job('y', 'mill', { windows: [{ date: MONDAY, from: 490, to: 1440 }] })
    const plain = board([sheet('A', MONDAY, ['x']), sheet('B', MONDAY, [])], [job('x', 'mill'), y])
    const sheets = plain.sheets.map((one) => (one.id === 'B' ? { ...one, visits: [{ jobId: 'y', startMinute: 490 }] } : one))
    const answer = ask({ ...plain, sheets, prices: { ...plain.prices, perRetime } }, { kind: 'sheet-off', sheetId: 'A' })
    expect(answer.proposal.spots.get('x')?.sheetId).toBe('B')
    expect(answer.proposal.spots.get('y')?.startMinute).toBe(start)
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
