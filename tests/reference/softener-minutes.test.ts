import { nioshLifting } from '@almanac/softener/kit/niosh-lifting'
import type { ProcedureContext } from '@almanac/softener/procedure/procedure-types'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import { type VisitKind, visitProcedure } from '@almanac/softener/procedure/visit-procedure'
import { describe, expect, it } from 'vitest'
import { ENGLISH } from '../support/procedure-words.ts'

const minutesOf = (steps: readonly { id: string; minutes: number }[]) => Object.fromEntries(steps.map((step) => [step.id, step.minutes]))
const domestic: ProcedureContext = {
  diameterIn: 10,
  heightIn: 54,
  resinVolumeFt3: 1.5,
  gravelLb: 18,
  hasBypass: true,
  display: { locale: 'en-US', unitSystem: 'us' },
}
const commercial: ProcedureContext = { ...domestic, diameterIn: 24, heightIn: 72, resinVolumeFt3: 10, gravelLb: 200 }

// The app's planning values, pinned so that none moves unnoticed.
const DOMESTIC: Record<string, number> = {
  'stop-and-refer': 3,
  'check-water': 6,
  'record-as-found': 4,
  'close-hot-side': 1,
  'prove-bypass': 4,
  'pressure-off': 4,
  'power-off': 1,
  'bonding-jumper': 2,
  'remove-valve': 6,
  'measure-bed': 2,
  'drain-tank': 6,
  'take-out-media': 16,
  'inspect-tank': 5,
  'cut-tube': 3,
  'cap-tube': 2,
  'water-first': 2,
  'pour-gravel': 3,
  'pour-resin': 11,
  'cap-out': 2,
  'seat-valve': 6,
  reconnect: 6,
  'start-in-backwash': 5,
  'run-clear': 8,
  'leaks-first': 2,
  sanitise: 2,
  'check-brine': 6,
  'full-regeneration': 15,
  'test-outlet': 5,
  'hand-over': 6,
  'clear-away': 5,
}
const COMMERCIAL: Record<string, number> = {
  'stop-and-refer': 3,
  'check-water': 6,
  'record-as-found': 4,
  'close-hot-side': 1,
  'prove-bypass': 4,
  'pressure-off': 4,
  'power-off': 1,
  'bonding-jumper': 2,
  'remove-valve': 6,
  'measure-bed': 2,
  'drain-tank': 30,
  'take-out-media': 160,
  'inspect-tank': 5,
  'cut-tube': 3,
  'cap-tube': 2,
  'water-first': 2,
  'pour-gravel': 30,
  'pour-resin': 80,
  'cap-out': 2,
  'seat-valve': 6,
  reconnect: 6,
  'start-in-backwash': 5,
  'run-clear': 20,
  'leaks-first': 2,
  sanitise: 2,
  'check-brine': 6,
  'full-regeneration': 60,
  'test-outlet': 5,
  'hand-over': 6,
  'clear-away': 30,
}
const VISITS: [VisitKind, Record<string, number>][] = [
  [
    'annual-visit',
    { 'stop-and-refer': 3, 'test-water': 8, 'check-settings': 5, 'check-brine-tank': 8, 'check-regeneration': 15, 'hand-over': 5 },
  ],
  [
    'cleaning',
    {
      'stop-and-refer': 3,
      'test-water': 8,
      'check-brine-tank': 8,
      'clean-bed': 50,
      'check-regeneration': 15,
      'test-outlet': 5,
      'hand-over': 5,
    },
  ],
  ['inspection', { 'stop-and-refer': 3, 'test-water': 8, 'pressure-off': 8, 'look-at-beads': 20, 'check-settings': 5, 'hand-over': 5 }],
  [
    'repair',
    { 'stop-and-refer': 3, 'test-water': 8, 'pressure-off': 8, repair: 40, 'check-regeneration': 15, 'test-outlet': 5, 'hand-over': 5 },
  ],
  ['emergency', { 'what-happened': 3, 'stop-and-refer': 3, 'leave-safe': 10 }],
  ['delivery', { work: 20 }],
]

// Time per step: common practice, no source. What the trade does say is the whole: 1.5 to 3 h in a house, half to a full day from 21 in up.
describe('minutes of a rebed (common practice, no source)', () => {
  it('add up to what the trade says, in a house and in a plant', () => {
    expect(rebedProcedure(domestic, ENGLISH).minutes).toBeGreaterThanOrEqual(90)
    expect(rebedProcedure(domestic, ENGLISH).minutes).toBeLessThanOrEqual(180)
    expect(rebedProcedure(commercial, ENGLISH).minutes).toBeGreaterThanOrEqual(240)
    expect(rebedProcedure(commercial, ENGLISH).minutes).toBeLessThanOrEqual(600)
  })
  it('step by step in a house', () => expect(minutesOf(rebedProcedure(domestic, ENGLISH).steps)).toEqual(DOMESTIC))
  it('step by step in a plant', () => expect(minutesOf(rebedProcedure(commercial, ENGLISH).steps)).toEqual(COMMERCIAL))
  it('are those of a plant from 6 ft³ up, whatever the diameter', () => {
    const gravel = (resinVolumeFt3: number) =>
      minutesOf(rebedProcedure({ ...domestic, diameterIn: 20, heightIn: 62, resinVolumeFt3 }, ENGLISH).steps)['pour-gravel']
    expect([gravel(5.9), gravel(6)]).toEqual([DOMESTIC['pour-gravel'], COMMERCIAL['pour-gravel']])
  })
})

describe('minutes of other visits (common practice, no source)', () => {
  it.each(VISITS)('%s', (kind, expected) => expect(minutesOf(visitProcedure(kind, domestic, ENGLISH).steps)).toEqual(expected))
})

describe('lifting', () => {
  // NIOSH 94-110, Table 5: frequency multipliers, work of up to an hour, hands below 30 in.
  it.each([
    [0.2, 1],
    [0.35, 0.985],
    [0.5, 0.97],
    [1, 0.94],
    [2, 0.91],
    [3, 0.88],
    [4, 0.84],
    [5, 0.8],
  ])('%d lifts a minute: %d', (liftsPerMinute, multiplier) => {
    const lift = nioshLifting({ weightLb: 30, horizontalIn: 10, verticalIn: 30, travelIn: 10, coupling: 'good', liftsPerMinute })
    expect(lift.ok && lift.value.multipliers.frequency).toBeCloseTo(multiplier, 12)
  })
  it('is taken as seldom where nobody said how often, and 10 in is the least travel counted (NIOSH 94-110)', () => {
    const lift = nioshLifting({ weightLb: 30, horizontalIn: 10, verticalIn: 30, travelIn: 5, coupling: 'good' })
    expect(lift.ok && [lift.value.multipliers.frequency, lift.value.multipliers.distance]).toEqual([1, 1])
    const eleven = nioshLifting({ weightLb: 30, horizontalIn: 10, verticalIn: 30, travelIn: 10.5, coupling: 'good' })
    expect(eleven.ok && eleven.value.multipliers.distance).toBeCloseTo(0.82 + 1.8 / 10.5, 9)
  })
  it('is called far above the limit beyond an index of 3 (NIOSH 94-110 §1.4)', () => {
    const advice = (weightLb: number) => {
      const lift = nioshLifting({ weightLb, horizontalIn: 10, verticalIn: 30, travelIn: 10, coupling: 'good' })
      return lift.ok ? lift.value.advice.slice(0, 9) : ''
    }
    expect([advice(51), advice(52), advice(3 * 51), advice(3.1 * 51)]).toEqual(['Within th', 'Above the', 'Above the', 'Far above'])
  })
  // A bag from the floor to the neck at 54 in: H 14, poor coupling, D = 54 − 6 = 48 in. V 6 at its beginning, 54 at its end: 1 − 0.0075·24 both times.
  // RWL = 51 · 10/14 · (1 − 0.0075·24) · (0.82 + 1.8/48) · 0.90 = 23.0 lb.
  it.each([1, 0.8945, 0.893, 0.75])('of a bag with %d ft³ is worked out from NIOSH 94-110', (resinVolumeFt3) => {
    const limitLb = 51 * (10 / 14) * (1 - 0.0075 * 24) * (0.82 + 1.8 / 48) * 0.9
    const index = (51 * resinVolumeFt3) / limitLb
    const pour = rebedProcedure({ ...domestic, resinVolumeFt3 }, ENGLISH).steps.find((step) => step.id === 'pour-resin')
    expect(pour?.cautions.map((one) => one.text).join(' ')).toContain(`lifting index of ${index.toFixed(1)}`)
  })
})
