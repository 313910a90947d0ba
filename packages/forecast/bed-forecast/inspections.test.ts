import { parseDay } from '@almanac/units/calendar/day-number'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { describe, expect, it } from 'vitest'
import { simulateFirm } from '../../../scripts/bench/simulate/simulate-firm.ts'
import { speakingIn } from '../../../tests/support/forecast-speaking.ts'
import type { BedRecord } from '../fit/bed-record.ts'
import { learnFromSamples } from '../fit/learn-from-samples.ts'
import { seeded } from '../numeric/seeded.ts'
import { centralValues } from '../priors/parameter-nodes.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import type { BedForecastInput, Inspection } from './bed-forecast-types.ts'
import { forecastBed } from './forecast-bed.ts'
import { READING_MODELS } from './inspection-model.ts'

const PRIOR = tradePriors()

const BASE: BedForecastInput = {
  asOfDay: '2026-01-01',
  beginning: { earliestDay: '2016-01-01', latestDay: '2016-01-01' },
  lastSeenDay: '2025-12-01',
  crosslinkPercent: 8,
  resinVolumeFt3: 1.5,
  gallonsPerDay: 138,
  water: {
    supplyPeriods: [{ fromDay: '2000-01-01', disinfectant: 'none', disinfectantMgL: null, hardnessGpg: 15, ironMgL: 0 }],
    tests: [],
    preTreatments: [],
  },
  speaking: speakingIn('en-US'),
}

function forecast(inspections: Inspection[], change: Partial<BedForecastInput> = {}, parameters = PRIOR) {
  const result = forecastBed({ ...BASE, inspections, ...change }, parameters)
  if (!result.ok) throw new Error(result.reason)
  return result
}
const due = (...inspections: Inspection[]) => parseDay(forecast(inspections).value.due50Day) ?? Number.NaN
const on = (reading: Omit<Inspection, 'day'>, day = '2025-12-01'): Inspection => ({ day, ...reading })

describe('inspections by Bayes', () => {
  it('bring a worn bed forward and put a sound one back, each kind in its own direction', () => {
    expect(due(on({ capacityShare: 0.72 }))).toBeLessThan(due())
    expect(due(on({ capacityShare: 0.97 }))).toBeGreaterThan(due())
    expect(due(on({ moistureShare: 0.6 }))).toBeLessThan(due(on({ moistureShare: 0.47 })))
    expect(due(on({ beadCondition: 'mushy' }))).toBeLessThan(due(on({ beadCondition: 'some-soft' })))
    expect(due(on({ beadCondition: 'some-soft' }))).toBeLessThan(due(on({ beadCondition: 'firm' })))
    expect(due(on({ pressureDropPsi: 5 }, '2018-01-01'), on({ pressureDropPsi: 12 }))).toBeLessThan(
      due(on({ pressureDropPsi: 12 }, '2018-01-01'), on({ pressureDropPsi: 12 })),
    )
  })

  it('tell the years taken, and no forecast without them says so', () => {
    const { value, assumptions } = forecast([on({ capacityShare: 0.72 })])
    const driver = value.drivers.find(({ key }) => key === 'inspection')
    expect(driver?.words).toMatch(/^capacity 72% in 2025: \d\.\d years shorter$/)
    const moved = (due() - (parseDay(value.due50Day) ?? Number.NaN)) / 365.2425
    expect(driver?.yearsTaken).toBeCloseTo(moved, 1)
    expect(assumptions.some((line) => line.startsWith('Readings of the bed'))).toBe(true)
    expect(forecast([]).value.drivers.some(({ key }) => key === 'inspection')).toBe(false)
  })

  it('change nothing when they lie after the day of the forecast, have no day, or hold what cannot be', () => {
    const plain = forecast([]).value.due50Day
    for (const one of [
      on({ capacityShare: 0.7 }, '2026-01-02'),
      { day: null, capacityShare: 0.7 },
      on({ capacityShare: 40, moistureShare: 2, pressureDropPsi: -3, beadCondition: 'odd' }),
    ])
      expect(forecast([one]).value.due50Day).toBe(plain)
  })

  it('equal Bayes’ rule by brute force over ten thousand lives', () => {
    // No doubt about parameters or water: Weibull 3, median 13.5 clean years, ten years old, one capacity of 0.8.
    const certain = { ...PRIOR, logCovariance: PRIOR.logCovariance.map(() => 0) }
    const water = {
      ...BASE.water,
      supplyPeriods: [],
      tests: [{ day: '2000-01-01', point: 'softener-inlet' as const, freeChlorineMgL: 0, totalChlorineMgL: 0, ironMgL: 0 }],
    }
    const { value } = forecast([on({ capacityShare: 0.8 })], { water, gallonsPerDay: null }, certain)
    const age = ((parseDay('2025-12-01') ?? 0) - (parseDay('2016-01-01') ?? 0)) / 365.2425
    const { start, startSd, rise, riseSd, noiseSd } = READING_MODELS.capacity
    const lives: { life: number; weight: number }[] = []
    for (let i = 0; i < 10_000; i++) {
      const hazard = Math.LN2 * (age / 13.5) ** 3 - Math.log(1 - (i + 0.5) / 10_000)
      const life = 13.5 * (hazard / Math.LN2) ** (1 / 3)
      const x = age / life
      const variance = noiseSd ** 2 + startSd ** 2 + (riseSd * x) ** 2
      lives.push({ life, weight: Math.exp(-((0.8 - start - rise * x) ** 2) / variance / 2) / Math.sqrt(variance) })
    }
    const total = lives.reduce((sum, one) => sum + one.weight, 0)
    for (const [p, day] of [
      [0.1, value.due10Day],
      [0.5, value.due50Day],
      [0.9, value.due90Day],
    ] as const) {
      let sum = 0
      const expected =
        lives.find((one) => {
          sum += one.weight
          return sum >= p * total
        })?.life ?? Number.NaN
      expect(((parseDay(day) ?? Number.NaN) - (parseDay('2016-01-01') ?? 0)) / 365.2425, `${p}`).toBeCloseTo(expected, 1)
    }
  })

  it('keep the 80% window honest where the readings are as the model has them (seeded, within 3.7 standard errors)', () => {
    const random = seeded(7)
    let [hits, beds] = [0, 0]
    for (let firm = 0; firm < 12; firm++) {
      const truth = Object.fromEntries(
        Object.entries(centralValues(PRIOR)).map(([key, value]) => [key, typeof value === 'number' ? value : Number.NaN]),
      )
      const draw = {
        ...centralValues(PRIOR),
        medianCleanYears: (truth.medianCleanYears ?? 0) * Math.exp(0.15 * normalQuantile(random(), 0, 1)),
      }
      const plan = { beds: 60, truth: draw, asOfDay: '2026-01-01', lateEntryShare: 0, earlyRemovalShare: 0, measuredShare: 0.4 }
      for (const { record, failsOn } of simulateFirm(plan, random, PRIOR)) {
        if (record.end !== null) continue
        const result = forecastBed({ ...record, asOfDay: '2026-01-01' }, PRIOR, 'figures')
        if (!result.ok) throw new Error(result.reason)
        beds++
        if (failsOn > (parseDay(result.value.due10Day) ?? 0) && failsOn <= (parseDay(result.value.due90Day) ?? 0) + 1) hits++
      }
    }
    expect(beds).toBeGreaterThan(250)
    // Beds of a firm share its median life, so that they are worth fewer witnesses: four hundredths more.
    expect(Math.abs(hits / beds - 0.8)).toBeLessThan(3.7 * Math.sqrt(0.16 / beds) + 0.04)
  })
})

describe('a graded sample of a removed bed', () => {
  const sample = (moistureShare: number, supply = 'north'): BedRecord => ({
    beginning: BASE.beginning,
    firstSeenDay: null,
    lastSeenDay: '2025-06-01',
    end: { earliestDay: '2025-06-01', latestDay: '2025-06-01', cause: 'removed-early' },
    crosslinkPercent: 8,
    resinVolumeFt3: 1.5,
    gallonsPerDay: 138,
    water: BASE.water,
    supply,
    inspections: [{ day: '2025-06-01', moistureShare }],
  })
  const dueOn = (supply: string, ...records: BedRecord[]) =>
    parseDay(forecast([], { supply }, learnFromSamples(PRIOR, records, '2026-01-01')).value.due50Day) ?? Number.NaN

  it('moves its neighbours on the same supply and nobody else', () => {
    const worn = [sample(0.62), sample(0.6), sample(0.63)]
    const sound = [sample(0.46), sample(0.47), sample(0.46)]
    expect(dueOn('north', ...worn)).toBeLessThan(dueOn('north', ...sound) - 60)
    expect(dueOn('south', ...worn)).toBe(dueOn('south', ...sound))
  })

  it('is left out after the day, from a failed bed, and where it says nothing', () => {
    expect(learnFromSamples(PRIOR, [{ ...sample(0.62), inspections: [] }], '2026-01-01')).toBe(PRIOR)
    const failed = { ...sample(0.62), end: { earliestDay: '2025-06-01', latestDay: '2025-06-01', cause: 'failed' as const } }
    expect(learnFromSamples(PRIOR, [failed], '2026-01-01')).toBe(PRIOR)
    expect(learnFromSamples(PRIOR, [{ ...sample(0.62), inspections: [{ day: '2026-03-01', moistureShare: 0.62 }] }], '2026-01-01')).toBe(
      PRIOR,
    )
  })
})
