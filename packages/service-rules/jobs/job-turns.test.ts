import { describe, expect, it } from 'vitest'
import { firstDayInTurn, outOfTurn } from './job-turns.ts'

describe('a job that follows another', () => {
  it('waits for the other to have a day', () => {
    expect(firstDayInTurn({ leastDays: 1, day: null })).toBeNull()
    expect(outOfTurn({ leastDays: 1, day: null }, '2026-12-03')).toMatch(/has no day yet/)
  })
  it('comes so many days after it, over the end of a month too', () => {
    const turn = { leastDays: 2, day: '2026-11-30' }
    expect(firstDayInTurn(turn)).toBe('2026-12-02')
    expect(outOfTurn(turn, '2026-12-01')).toBe('It must come at least 2 days after the visit of 2026-11-30.')
    expect(outOfTurn(turn, '2026-12-02')).toBeNull()
  })
  it('may stand on the same day where no days are asked for', () => {
    expect(outOfTurn({ leastDays: 0, day: '2026-12-02' }, '2026-12-02')).toBeNull()
    expect(outOfTurn({ leastDays: 0, day: '2026-12-02' }, '2026-12-01')).toBe('It follows the visit of 2026-12-02.')
  })
})
