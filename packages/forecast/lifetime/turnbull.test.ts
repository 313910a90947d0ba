import { describe, expect, it } from 'vitest'
import { kaplanMeier, survivalAt } from './kaplan-meier.ts'
import { turnbull } from './turnbull.ts'

describe('Turnbull', () => {
  it('equals Kaplan–Meier where failures are exact, also with late entry', () => {
    const lives = [
      [3, true, 0],
      [4, false, 0],
      [5, true, 1],
      [5, false, 0],
      [7, true, 2],
      [9, true, 0],
      [9, true, 4],
      [11, false, 0],
      [12, true, 6],
      [14, false, 3],
    ] as const
    for (const late of [false, true]) {
      const masses = turnbull(
        lives.map(([age, failed, entry]) => ({ lower: age, upper: failed ? age : Number.POSITIVE_INFINITY, entry: late ? entry : 0 })),
      )
      const steps = kaplanMeier(lives.map(([age, failed, entry]) => ({ age, failed, entry: late ? entry : 0 })))
      for (const { age } of steps) {
        const left = masses.reduce((sum, mass) => sum + (mass.upper > age ? mass.share : 0), 0)
        expect(left, `${late ? 'late ' : ''}${age}`).toBeCloseTo(survivalAt(steps, age), 6)
      }
    }
  })

  it('solves the self-consistency equation by hand: (0,1] ×1, (0,2] ×1, (1,∞) ×1', () => {
    // Mass can stand on (0,1] and (1,2]: p1·(p1+p2)·p2 with p1 + p2 = 1, largest at one half each.
    const masses = turnbull([
      { lower: 0, upper: 1 },
      { lower: 0, upper: 2 },
      { lower: 1, upper: Number.POSITIVE_INFINITY },
    ])
    expect(masses.map((mass) => [mass.lower, mass.upper])).toEqual([
      [0, 1],
      [1, 2],
    ])
    masses.forEach((mass) => void expect(mass.share).toBeCloseTo(0.5, 8))
  })

  it('adds up to one and answers nothing for no record', () => {
    expect(turnbull([])).toEqual([])
    const masses = turnbull([
      { lower: 2, upper: 5, weight: 3 },
      { lower: 4, upper: 6 },
      { lower: 5, upper: Number.POSITIVE_INFINITY },
    ])
    expect(masses.reduce((sum, mass) => sum + mass.share, 0)).toBeCloseTo(1, 10)
  })
})
