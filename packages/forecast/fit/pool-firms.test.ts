import { describe, expect, it } from 'vitest'
import { simulateFirm } from '../../../scripts/bench/simulate/simulate-firm.ts'
import { seeded } from '../numeric/seeded.ts'
import { type ForecastParameters, PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { centralValues } from '../priors/parameter-nodes.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import { fitBedRecords } from './fit-bed-records.ts'
import { pooledPrior } from './pool-firms.ts'

const PRIOR = tradePriors()
const SIZE = PARAMETER_KEYS.length

/** A firm that knows its median life to `sd` and has learned nothing else. */
function firm(median: number, sd: number): ForecastParameters {
  const logMean = [...PRIOR.logMean]
  logMean[0] = Math.log(median)
  const logCovariance = [...PRIOR.logCovariance]
  logCovariance[0] = sd ** 2
  return { ...PRIOR, version: 'other', logMean, logCovariance }
}

const records = (seed: number, median: number) =>
  simulateFirm(
    {
      beds: 60,
      truth: { ...centralValues(PRIOR), medianCleanYears: median },
      asOfDay: '2026-01-01',
      lateEntryShare: 0.3,
      earlyRemovalShare: 0.1,
    },
    seeded(seed),
    PRIOR,
  ).map((bed) => bed.record)

function fitted(seed: number, median: number, prior = PRIOR): ForecastParameters {
  const fit = fitBedRecords(records(seed, median), prior, '2026-01-01', `firm-${seed}`)
  if (!fit.ok) throw new Error(fit.reason)
  return fit.value.parameters
}

describe('pooling between firms', () => {
  it('is off unless the firm opted in, and then no other firm can change its fit', () => {
    const others = [fitted(1, 9), fitted(2, 9)]
    expect(pooledPrior(PRIOR, { optedIn: false, others })).toBe(PRIOR)
    expect(pooledPrior(PRIOR, { optedIn: true, others: [] })).toBe(PRIOR)
    const alone = fitted(3, 14)
    expect(fitted(3, 14, pooledPrior(PRIOR, { optedIn: false, others }))).toEqual(alone)
    expect(fitted(3, 14, pooledPrior(PRIOR, { optedIn: true, others })).logMean).not.toEqual(alone.logMean)
  })

  it('has the normal hierarchy’s closed form in one dimension', () => {
    // One firm sees x with variance v; firms differ by b; the trade's mean has prior m0, variance t. By hand: precision 1/t + 1/(v + b).
    const [sd, prior] = [0.05, PRIOR.logCovariance[0] ?? Number.NaN]
    const own = 1 / (1 / sd ** 2 - 1 / prior)
    const [t, b] = [prior / 2, prior / 2]
    const x = (Math.log(10) / sd ** 2 - (PRIOR.logMean[0] ?? 0) / prior) * own
    const precision = 1 / t + 1 / (own + b)
    const expected = ((PRIOR.logMean[0] ?? 0) / t + x / (own + b)) / precision
    const pooled = pooledPrior(PRIOR, { optedIn: true, others: [firm(10, sd)] })
    expect(pooled.logMean[0]).toBeCloseTo(expected, 9)
    expect(pooled.logCovariance[0]).toBeCloseTo(1 / precision + b, 9)
    // What nobody learned stays as it was.
    for (let i = 1; i < SIZE; i++) {
      expect(pooled.logMean[i]).toBeCloseTo(PRIOR.logMean[i] ?? Number.NaN, 8)
      expect(pooled.logCovariance[i * SIZE + i]).toBeCloseTo(PRIOR.logCovariance[i * SIZE + i] ?? Number.NaN, 8)
    }
  })

  it('never doubts less than firms differ, however many share', () => {
    const pooled = pooledPrior(PRIOR, { optedIn: true, others: Array.from({ length: 200 }, () => firm(10, 0.01)) })
    expect(Math.exp(pooled.logMean[0] ?? Number.NaN)).toBeCloseTo(10, 1)
    expect(pooled.logCovariance[0]).toBeGreaterThan(0.5 * (PRIOR.logCovariance[0] ?? 0))
  })
})
