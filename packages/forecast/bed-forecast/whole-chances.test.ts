import { isoDay, parseDay } from '@almanac/units/calendar/day-number'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { speakingIn } from '../../../tests/support/forecast-speaking.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import type { BedForecastInput } from './bed-forecast-types.ts'
import { forecastBed } from './forecast-bed.ts'

const PARAMETERS = tradePriors()
const AS_OF = parseDay('2026-01-01') as number

const input = (change: Partial<BedForecastInput> = {}): BedForecastInput => ({
  asOfDay: '2026-01-01',
  beginning: { earliestDay: '2016-01-01', latestDay: '2016-01-01' },
  lastSeenDay: '2025-12-01',
  crosslinkPercent: 8,
  resinVolumeFt3: 1.5,
  gallonsPerDay: 138,
  water: { supplyPeriods: [], tests: [], preTreatments: [] },
  speaking: speakingIn('en-US'),
  ...change,
})

/** Chlorine measured at the inlet since ever: far beyond what any town doses, so that a bed is due within days. */
const strong = (mgL: number): BedForecastInput['water'] => ({
  supplyPeriods: [],
  tests: [{ day: '1990-01-01', point: 'softener-inlet', freeChlorineMgL: mgL, totalChlorineMgL: mgL, ironMgL: 0 }],
  preTreatments: [],
})

function forecast(change: Partial<BedForecastInput>) {
  const result = forecastBed(input(change), PARAMETERS)
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

function expectChances(change: Partial<BedForecastInput>) {
  const { nodeMonthChances, monthChances, chanceAlreadyFailed } = forecast(change)
  expect(nodeMonthChances.every((chance) => chance >= 0 && chance <= 1)).toBe(true)
  expect(chanceAlreadyFailed + monthChances.reduce((sum, chance) => sum + chance, 0)).toBeLessThanOrEqual(1 + 1e-9)
  const months = monthChances.length
  for (let at = 0; at < nodeMonthChances.length; at += months)
    expect(nodeMonthChances.subarray(at, at + months).reduce((sum, chance) => sum + chance, 0)).toBeLessThanOrEqual(1 + 1e-9)
}

describe('chances of a month', () => {
  it('lie between 0 and 1 and add up to 1 at most, however soon the bed is due', () => {
    expectChances({ water: strong(60), beginning: { earliestDay: '1996-01-01', latestDay: '1996-01-01' } })
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.integer({ min: 0, max: 14_000 }),
        fc.integer({ min: 0, max: 2000 }),
        fc.boolean(),
        (mgL, age, unseen, inspected) => {
          const begin = AS_OF - age - unseen
          expectChances({
            water: strong(mgL),
            beginning: { earliestDay: isoDay(begin), latestDay: isoDay(begin) },
            lastSeenDay: isoDay(AS_OF - unseen),
            inspections: inspected ? [{ day: isoDay(AS_OF - unseen), capacityShare: 0.8 }] : [],
          })
        },
      ),
      { numRuns: 150 },
    )
  })

  it('of a bed due within days are those of its life itself, not of a curve drawn through it', () => {
    // One parameter set without doubt: Weibull 3, median 13.5 clean years; chance of month m is S(m) − S(m+1) over S(last seen).
    const certain = { ...PARAMETERS, logCovariance: PARAMETERS.logCovariance.map(() => 0) }
    const result = forecastBed(
      input({
        water: strong(60),
        beginning: { earliestDay: '1996-01-01', latestDay: '1996-01-01' },
        gallonsPerDay: null,
        lastSeenDay: '2026-01-01',
      }),
      certain,
    )
    if (!result.ok) throw new Error(result.reason)
    const hazard = (day: string) =>
      Math.LN2 * ((((parseDay(day) as number) - (parseDay('1996-01-01') as number)) / 365.2425) * 61 ** 0.7 * (1 / 13.5)) ** 3
    const left = (day: string) => Math.exp(hazard('2026-01-01') - hazard(day))
    expect(result.value.monthChances[0]).toBeCloseTo(1 - left('2026-02-01'), 6)
    expect(result.value.monthChances[1]).toBeCloseTo(left('2026-02-01') - left('2026-03-01'), 6)
  })
})

describe('many inspections of one bed', () => {
  it('are all used: the two hundredth counts as the first did', () => {
    const list = Array.from({ length: 200 }, (_, i) => ({ day: isoDay(AS_OF - 31 - 14 * i), capacityShare: 0.9 }))
    expectChances({ inspections: list })
    const few = parseDay(forecast({ inspections: list.slice(0, 60) }).due50Day) as number
    const all = parseDay(forecast({ inspections: list }).due50Day) as number
    // The same reading again and again pins the bed's own start and loss, so that the date moves by little.
    expect(Math.abs(all - few)).toBeLessThan(3 * 365)
  })
})

describe('a bed of unknown beginning', () => {
  const unknown = { earliestDay: null, latestDay: null }
  const year = (change: Partial<BedForecastInput>) => forecast({ beginning: unknown, ...change }).chance12Months

  it('ages from the day it was first seen: yearly visits since 2008 make it no younger', () => {
    const met = year({ lastSeenDay: '2008-01-01', firstSeenDay: '2008-01-01', asOfDay: '2008-06-01' })
    const seen = year({ firstSeenDay: '2008-01-01', lastSeenDay: '2025-12-01' })
    expect(seen).toBeGreaterThan(2 * met)
  })

  it('that came with a list and nobody has seen since had gone in by the list’s day, and may have failed', () => {
    const listed = forecast({ beginning: unknown, lastSeenDay: null, listedDay: '2016-01-01' })
    expect(listed.beginning).toEqual({ earliestDay: '1996-01-01', latestDay: '2016-01-01' })
    // Without the list it counts as just put in at the latest, and works today for certain.
    expect(forecast({ beginning: unknown, lastSeenDay: null }).chanceAlreadyFailed).toBeCloseTo(0, 12)
    expect(listed.chanceAlreadyFailed).toBeGreaterThan(0.2)
  })

  it('never gets a later beginning by another day on which it was seen working', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 0, max: 9000 }), (age, a, b) => {
        const first = AS_OF - age
        const [early, late] = [first + Math.min(a, b, age), first + Math.min(Math.max(a, b), age)]
        const at = (seen: number) => forecast({ beginning: unknown, firstSeenDay: isoDay(first), lastSeenDay: isoDay(seen) }).beginning
        expect(at(late)).toEqual(at(early))
        // A day still earlier on which it was seen never moves the beginning later.
        const earlier = forecast({ beginning: unknown, firstSeenDay: isoDay(first - 400), lastSeenDay: isoDay(late) }).beginning
        expect(earlier.latestDay <= at(late).latestDay && earlier.earliestDay <= at(late).earliestDay).toBe(true)
      }),
      { numRuns: 100 },
    )
  })

  it('began after the bed before it in the tank came out, and is asked about no more when that pins it', () => {
    const { beginning, weakness } = forecast({
      beginning: { earliestDay: null, latestDay: '2014-12-31' },
      earlierBedEndedDay: '2014-09-02',
    })
    expect(beginning).toEqual({ earliestDay: '2014-09-02', latestDay: '2014-12-31' })
    expect(weakness.byCause.find(({ key }) => key === 'beginning')?.years ?? 0).toBeLessThan(0.2)
    // A bed that came out after this one was seen is no predecessor.
    const after = forecast({ beginning: unknown, firstSeenDay: '2012-01-01', earlierBedEndedDay: '2014-09-02' }).beginning
    expect(after.latestDay).toBe('2012-01-01')
  })
})

describe('a forecast that comes out as no number', () => {
  it('is refused with a sentence for this bed', () => {
    const broken = { ...PARAMETERS, logMean: PARAMETERS.logMean.map((mean, i) => (i === 1 ? 700 : mean)) }
    const result = forecastBed(input(), broken)
    expect(result).toMatchObject({ ok: false, reason: expect.stringMatching(/^This bed’s chances could not be worked out.*\.$/) })
  })
})
