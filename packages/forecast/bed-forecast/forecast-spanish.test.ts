import type { Disinfectant } from '@almanac/records/disinfectant'
import { describe, expect, it } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import { speakingIn } from '../../../tests/support/forecast-speaking.ts'
import { TRADE_PRIORS, tradePriors } from '../priors/trade-priors.ts'
import type { BedForecastInput } from './bed-forecast-types.ts'
import { forecastBed } from './forecast-bed.ts'

const period = (fromDay: string, disinfectant: Disinfectant | null, mgL: number | null, ironMgL: number | null = 0) => ({
  ...{ fromDay, disinfectant, disinfectantMgL: mgL, hardnessGpg: 15, ironMgL },
})
const test = (point: 'raw' | 'softener-inlet', values: object, day = '2025-01-01') => ({ day, point, ...values })
const carbon = { kind: 'carbon', fromDay: '2021-01-01', toDay: null } as const
const water = (part: Partial<BedForecastInput['water']>) => ({ water: { supplyPeriods: [], tests: [], preTreatments: [], ...part } })

const BASE: BedForecastInput = {
  ...{ asOfDay: '2026-06-15', beginning: { earliestDay: '2012-05-01', latestDay: '2012-05-01' }, lastSeenDay: '2026-03-01' },
  ...{ crosslinkPercent: 8, resinVolumeFt3: 1.5, gallonsPerDay: 138, speaking: speakingIn('es-US') },
  ...water({ supplyPeriods: [period('2000-01-01', 'free-chlorine', 1.2, 0.4), period('2019-01-01', 'chloramine', 2.5)] }),
}

/** Facts that each bring sentences of their own. */
const CASES: Record<string, Partial<BedForecastInput>> = {
  'a town that turned to chloramine': {},
  'nothing known': {
    ...{ beginning: { earliestDay: null, latestDay: null }, lastSeenDay: null, crosslinkPercent: null },
    ...{ resinVolumeFt3: null, gallonsPerDay: null, customerCalls: true, ...water({}) },
  },
  'known within years': { beginning: { earliestDay: '2010-01-01', latestDay: '2014-12-31' }, firstSeenDay: '2013-06-01' },
  'after an earlier bed': { beginning: { earliestDay: null, latestDay: null }, earlierBedEndedDay: '2015-05-01' },
  'busy, carbon ahead, an announced change': {
    ...{ gallonsPerDay: 900, crosslinkPercent: 10 },
    ...water({
      supplyPeriods: [period('2000-01-01', 'free-chlorine', null, null), period('2027-01-01', 'chloramine', null)],
      preTreatments: [carbon, { kind: 'iron-filter', fromDay: '2020-01-01', toDay: '2022-01-01' }],
    }),
  },
  'little water, a well': { gallonsPerDay: 20, ...water({ supplyPeriods: [period('2000-01-01', 'none', null, 0.8)] }) },
  'tests at the inlet': {
    ...water({
      supplyPeriods: [period('2000-01-01', null, null, null)],
      tests: [
        test('softener-inlet', { freeChlorineMgL: 0.5, totalChlorineMgL: 2, ironMgL: 0.3, temperatureC: 99 }, '2014-01-01'),
        test('softener-inlet', { freeChlorineMgL: 0.7 }, '2018-01-01'),
        test('softener-inlet', { totalChlorineMgL: 1.1 }, '2022-01-01'),
        test('raw', { totalChlorineMgL: 1 }, '2028-01-01'),
      ],
    }),
  },
  'tests of raw water with carbon': {
    ...water({
      supplyPeriods: [period('2000-01-01', 'chloramine', 2)],
      tests: [test('raw', { totalChlorineMgL: 2.2 }), test('raw', { freeChlorineMgL: 0.6 }, '2020-01-01')],
      preTreatments: [carbon],
    }),
  },
  inspected: {
    inspections: [
      { day: '2024-01-01', capacityShare: 0.7, moistureShare: 0.56, pressureDropPsi: 9, beadCondition: 'mushy' },
      { day: '2026-01-01', beadCondition: 'some-soft' },
    ],
  },
  'found broken': { inspections: [{ day: '2026-01-01', beadCondition: 'broken' }] },
  'found firm': { inspections: [{ day: '2026-01-01', beadCondition: 'firm' }] },
}

/** Records that contradict themselves. */
const REFUSED: Record<string, Partial<BedForecastInput>> = {
  'no real day': { asOfDay: '2026-02-30' },
  'seen on no real day': { lastSeenDay: '2026-02-30' },
  'seen later': { lastSeenDay: '2027-01-01' },
  'went in on no real day': { beginning: { earliestDay: '2026-02-30', latestDay: null } },
  'went in the wrong way round': { beginning: { earliestDay: '2020-01-01', latestDay: '2019-01-01' } },
  'went in later': { beginning: { earliestDay: '2027-01-01', latestDay: null }, lastSeenDay: null },
  'seen before it went in': { beginning: { earliestDay: '2026-05-01', latestDay: null } },
  'first seen on no real day': { firstSeenDay: 'x' },
  crosslink: { crosslinkPercent: 50 },
  volume: { resinVolumeFt3: -1 },
  use: { gallonsPerDay: -1 },
  'a period on no real day': water({ supplyPeriods: [period('2026-02-30', 'none', null)] }),
  'a test on no real day': water({ tests: [test('raw', {}, '2026-02-30')] }),
  disinfectant: water({ supplyPeriods: [period('2020-01-01', 'chloramine', -2)] }),
  'iron of the supply': water({ supplyPeriods: [period('2020-01-01', 'chloramine', 2, 400)] }),
  hardness: water({ supplyPeriods: [{ ...period('2020-01-01', 'none', null), hardnessGpg: 4000 }] }),
  'free chlorine': water({ tests: [test('raw', { freeChlorineMgL: -1 })] }),
  'total chlorine': water({ tests: [test('raw', { totalChlorineMgL: -1 })] }),
  'pre-treatment on no real day': water({ preTreatments: [{ ...carbon, fromDay: 'x' }] }),
  'pre-treatment the wrong way round': water({ preTreatments: [{ ...carbon, toDay: '2020-01-01' }] }),
}

describe('a forecast said in Spanish', () => {
  it.each(Object.entries(CASES))('%s: no English, and each sentence is filled in', (_, change) => {
    const result = forecastBed({ ...BASE, ...change }, tradePriors())
    if (!result.ok) throw new Error(result.reason)
    const { drivers, exposure, explanation } = result.value
    const sources = explanation.sources
    const inputs = explanation.inputs.flatMap(({ name, value }) => [name, value])
    const said = [...drivers.map(({ words }) => words), ...exposure.map(({ why }) => why), explanation.formula, ...sources, ...inputs]
    const all = [...said, ...result.assumptions, ...result.missing].join(' · ')
    expect(englishLeft(all)).toEqual([])
    expect(all).not.toMatch(/[{}]|undefined|NaN/)
  })
  it.each(Object.entries(REFUSED))('%s is refused without English', (_, change) => {
    const result = forecastBed({ ...BASE, ...change }, tradePriors())
    expect(result.ok).toBe(false)
    const reason = result.ok ? '' : result.reason
    expect(englishLeft(reason)).toEqual([])
    expect(reason).toMatch(/^[\p{Lu}][^{}]*\.$/u)
  })
  it('where each figure comes from is said as it stands beside the figure', () => {
    const english = speakingIn('en-US').words
    for (const [key, { source }] of Object.entries(TRADE_PRIORS)) expect(english(`source/${key as 'shape'}`)).toBe(source)
  })
  it('days, decimals and years follow the reader', () => {
    const found = forecastBed({ ...BASE, speaking: speakingIn('es-ES') }, tradePriors())
    const chloramine = found.ok ? found.value.drivers.find(({ key }) => key === 'chloramine') : null
    expect(chloramine?.words).toMatch(/^cloramina 2,5 mg\/L desde 2019: \d,\d años menos$/)
  })
})
