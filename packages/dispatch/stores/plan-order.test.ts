import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Demand, planOrder } from './plan-order.ts'

const booked = (day: number, quantity: number): Demand => ({ day, quantity, sure: true })
const expected = (day: number, quantity: number): Demand => ({ day, quantity, sure: false })

describe('running the shelf down', () => {
  test('finds the day it falls short, and the last day to order', () => {
    const plan = planOrder({ onHand: 5, leadDays: 14 }, [booked(110, 2), booked(120, 2), expected(130, 2)], 200)
    expect(plan).toEqual({ shortForBookedOn: null, outOn: 130, orderBy: 116, missing: 1, free: 1 })
  })
  test('booked work that finds too little is named by its own day, whatever was expected before it', () => {
    const plan = planOrder({ onHand: 3, leadDays: 7 }, [booked(110, 2), booked(105, 2)], 200)
    expect(plan).toMatchObject({ shortForBookedOn: 110, outOn: 110, orderBy: 103, missing: 1, free: -1 })
  })
  test('an order may already be late, and says so by a day in the past', () => {
    expect(planOrder({ onHand: 0, leadDays: 30 }, [booked(100, 1)], 200).orderBy).toBe(70)
  })
  test('enough is enough: nothing to order, and what lies beyond the horizon does not count', () => {
    expect(planOrder({ onHand: 4, leadDays: 14 }, [booked(100, 4), expected(201, 9)], 200)).toEqual({
      ...{ shortForBookedOn: null, outOn: null, orderBy: null, missing: 0, free: 0 },
    })
  })
  test('what is no quantity is left out', () => {
    const odd = [booked(Number.NaN, 3), expected(100, Number.NaN), expected(100, -4), booked(100, Number.POSITIVE_INFINITY)]
    expect(planOrder({ onHand: 1, leadDays: 0 }, odd, 200)).toMatchObject({ outOn: null, missing: 0, free: 1 })
  })
  test('what is missing is what was taken beyond the shelf, in whatever order it was given', () => {
    const demand = fc.record({ day: fc.integer({ min: 0, max: 60 }), quantity: fc.integer({ min: 1, max: 9 }), sure: fc.boolean() })
    fc.assert(
      fc.property(fc.array(demand, { maxLength: 20 }), fc.integer({ min: 0, max: 40 }), (demands, onHand) => {
        const total = demands.reduce((sum, one) => sum + one.quantity, 0)
        const plan = planOrder({ onHand, leadDays: 5 }, demands, 60)
        expect(plan.missing).toBe(Math.max(0, total - onHand))
        expect(plan.outOn === null).toBe(plan.missing === 0)
        expect(planOrder({ onHand, leadDays: 5 }, [...demands].reverse(), 60)).toEqual(plan)
      }),
      { seed: 20261125 },
    )
  })
})
