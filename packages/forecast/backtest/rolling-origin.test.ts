import { describe, expect, it } from 'vitest'
import { simulateFirm } from '../../../scripts/bench/simulate/simulate-firm.ts'
import type { BedRecord } from '../fit/bed-record.ts'
import type { ParameterValues } from '../priors/forecast-parameters.ts'
import { centralValues } from '../priors/parameter-nodes.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import { brierScore, watching } from './brier.ts'
import { failedBy } from './outcome.ts'
import { backtest } from './rolling-origin.ts'

const PRIOR = tradePriors()
const ORIGINS = ['2018-01-01', '2020-01-01', '2022-01-01', '2024-01-01']

function seeded(seed: number) {
  let s = seed
  return () => {
    s = (16807 * s) % 2147483647
    return s / 2147483647
  }
}

function run(truth: ParameterValues, seed: number) {
  const firm = simulateFirm({ beds: 900, truth, asOfDay: '2026-01-01', lateEntryShare: 0.3, earlyRemovalShare: 0.1 }, seeded(seed), PRIOR)
  const result = backtest(
    firm.map((bed) => bed.record),
    PRIOR,
    ORIGINS,
    seeded(seed + 1),
  )
  if (!result.ok) throw new Error(result.reason)
  const score = Object.fromEntries(result.value.scores.map((row) => [row.method, row.integratedBrier]))
  return { ...result.value, score }
}

describe('scores by hand', () => {
  it('weights the watched for those lost from sight (Graf et al. 1999)', () => {
    // Four beds, origin 0, day 100. One fails on day 50; one is lost on day 60; two last. After day 60 the chance of being watched is 2/3.
    const inf = Number.POSITIVE_INFINITY
    const outcomes = [
      { after: 40, by: 50 },
      { after: 60, by: inf },
      { after: 200, by: inf },
      { after: 200, by: inf },
    ]
    const watch = watching(outcomes, 0)
    const beds = outcomes.map((outcome) => ({ outcome, chance: 0.5 }))
    const { sum, weight } = brierScore(beds, watch, 0, 100)
    expect(weight).toBeCloseTo(1 + 1.5 + 1.5, 12)
    expect(sum / weight).toBeCloseTo(0.25, 12)
  })

  it('splits a failure between two visits at the day scored', () => {
    expect(failedBy({ after: 40, by: 60 }, 50)).toBe(0.5)
    expect(failedBy({ after: 40, by: Number.POSITIVE_INFINITY }, 50)).toBeNull()
    expect(failedBy({ after: 60, by: Number.POSITIVE_INFINITY }, 50)).toBe(0)
  })
})

describe('a backtest on a simulated firm', () => {
  it('beats rules that know only age where exposure matters, and covers what it should', () => {
    const result = run({ ...centralValues(PRIOR), shape: 4, chlorineExponent: 0.9, chloramineWeight: 1.5 }, 5)
    expect(result.bedsScored).toBeGreaterThan(500)
    const best = Math.min(result.score['age-only Weibull'] ?? 0, result.score['Kaplan–Meier'] ?? 0, result.score['fixed age'] ?? 0)
    expect(result.score.forecast).toBeLessThan(best * 0.9)
    expect(Math.abs(result.coverage80 - 0.8)).toBeLessThan(0.06)
    expect(result.worst).toHaveLength(10)
  }, 60_000)

  it('cannot see what came after its origin', () => {
    const firm = simulateFirm(
      { beds: 300, truth: centralValues(PRIOR), asOfDay: '2026-01-01', lateEntryShare: 0.3, earlyRemovalShare: 0.1 },
      seeded(9),
      PRIOR,
    )
    const records = firm.map((bed) => bed.record)
    // Later failures moved about within the time after the last horizon: the forecasts made on the origin stay the same, hence so do all scores up to the horizon.
    const moved: BedRecord[] = records.map((record) =>
      record.end !== null && record.end.earliestDay > '2022-06-01'
        ? { ...record, end: { ...record.end, earliestDay: record.end.latestDay } }
        : record,
    )
    const at = (list: BedRecord[]) => backtest(list, PRIOR, ['2020-01-01'], seeded(1))
    const [a, b] = [at(records), at(moved)]
    expect(a.ok && a.value.scores).toEqual(b.ok && b.value.scores)
    // Nor what became of the water after it: a change of the supply, and carbon set ahead, a year later.
    const changed = records.map((record) => ({
      ...record,
      water: {
        ...record.water,
        supplyPeriods: [
          ...record.water.supplyPeriods,
          { fromDay: '2021-01-01', disinfectant: 'chloramine' as const, disinfectantMgL: 3.5, hardnessGpg: 15, ironMgL: 1 },
        ],
        preTreatments: [...record.water.preTreatments, { kind: 'carbon' as const, fromDay: '2021-06-01', toDay: null }],
      },
    }))
    const c = at(changed)
    expect(a.ok && a.value.scores).toEqual(c.ok && c.value.scores)
    // What was known on the day does tell.
    const known = at(
      changed.map((record) => ({
        ...record,
        water: {
          ...record.water,
          supplyPeriods: record.water.supplyPeriods.map((one) => (one.fromDay === '2021-01-01' ? { ...one, fromDay: '2019-01-01' } : one)),
        },
      })),
    )
    expect(a.ok && a.value.scores).not.toEqual(known.ok && known.value.scores)
  })
})
