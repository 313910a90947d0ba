import { describe, expect, it } from 'vitest'
import { firstDayInTurn, outOfTurn } from './job-turns.ts'

const US = { locale: 'en-US' }

describe('a job that follows another', () => {
  it('waits for the other to have a day', () => {
    expect(firstDayInTurn({ leastDays: 1, day: null })).toBeNull()
    expect(outOfTurn({ leastDays: 1, day: null }, '2026-12-03', US)).toMatch(/has no day yet/)
  })
  it('comes so many days after it, over the end of a month too', () => {
    const turn = { leastDays: 2, day: '2026-11-30' }
    expect(firstDayInTurn(turn)).toBe('2026-12-02')
    expect(outOfTurn(turn, '2026-12-01', US)).toBe('It must come at least 2 days after the visit of Nov 30, 2026.')
    expect(outOfTurn(turn, '2026-12-02', US)).toBeNull()
  })
  it('may stand on the same day where no days are asked for', () => {
    expect(outOfTurn({ leastDays: 0, day: '2026-12-02' }, '2026-12-02', US)).toBeNull()
    expect(outOfTurn({ leastDays: 0, day: '2026-12-02' }, '2026-12-01', US)).toBe('It follows the visit of Dec 2, 2026.')
  })
})
