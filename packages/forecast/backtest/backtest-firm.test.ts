import { describe, expect, it } from 'vitest'
import { simulateFirm } from '../../../scripts/bench/simulate/simulate-firm.ts'
import { seeded } from '../numeric/seeded.ts'
import { centralValues } from '../priors/parameter-nodes.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import { backtestFirm } from './backtest-firm.ts'

const PRIOR = tradePriors()
const AS_OF = '2026-01-01'
const records = simulateFirm(
  { beds: 500, truth: centralValues(PRIOR), asOfDay: AS_OF, lateEntryShare: 0.3, earlyRemovalShare: 0.1 },
  seeded(3),
  PRIOR,
).map((bed) => bed.record)
const options = { origins: ['2019-01-01', '2021-01-01', '2023-01-01'] }

function run(list = records, seed = 1) {
  const result = backtestFirm(list, PRIOR, AS_OF, seed, options)
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

describe('a firm’s backtest', () => {
  const value = run()

  it('is the same for the same seed, and its outcomes spread anew for another', () => {
    expect(run()).toEqual(value)
    expect(run(records, 2).places).not.toEqual(value.places)
    expect(run(records, 2).scores).toEqual(value.scores)
  })

  it('counts each outcome in one bar and adds skill to scores', () => {
    expect(value.bins).toHaveLength(20)
    expect(value.bins.reduce((sum, bar) => sum + bar, 0)).toBe(value.bedsScored)
    const score = (method: string) => value.scores.find((row) => row.method === method)?.integratedBrier ?? Number.NaN
    for (const { method, percent } of value.skill) expect(percent).toBeCloseTo(100 * (1 - score('forecast') / score(method)), 10)
    expect(value.skill.map(({ method }) => method)).toEqual(['age-only Weibull', 'Kaplan–Meier', 'fixed age'])
  })

  it('is honest where the truth is the model’s own: windows, counts and chances (bounds of four standard errors)', () => {
    expect(Math.abs(value.coverage80 - 0.8)).toBeLessThan(4 * value.coverageStandardError)
    expect(value.coverageStandardError).toBeLessThan(0.04)
    for (const { expected, happened, beds } of value.counts) {
      expect(beds).toBeGreaterThan(100)
      expect(Math.abs(happened - expected)).toBeLessThan(4 * Math.sqrt(expected))
    }
    for (const bin of value.reliability)
      expect(Math.abs(bin.happened - bin.chance)).toBeLessThan(0.02 + 4 * Math.sqrt((bin.chance * (1 - bin.chance)) / bin.beds))
  })

  it('finds a forecast out that promises too much', () => {
    // The firm's beds fail at half the age they were recorded at from 2021 on: the past could not tell.
    const worse = records.map((record) =>
      record.end?.cause === 'failed' || record.lastSeenDay === null || record.lastSeenDay < '2021-06-01'
        ? record
        : { ...record, lastSeenDay: '2021-06-01', end: { earliestDay: '2021-06-01', latestDay: '2022-03-01', cause: 'failed' as const } },
    )
    const found = backtestFirm(worse, PRIOR, AS_OF, 1, { origins: ['2021-01-01'] })
    if (!found.ok) throw new Error(found.reason)
    const [count] = found.value.counts
    expect(count?.happened ?? 0).toBeGreaterThan(count?.high ?? Number.POSITIVE_INFINITY)
    expect(Math.abs(found.value.coverage80 - 0.8)).toBeGreaterThan(4 * found.value.coverageStandardError)
  })

  it('takes a sample of a large fleet and says so; refuses a firm without a past', () => {
    const few = backtestFirm(records, PRIOR, AS_OF, 1, { ...options, mostBedsPerOrigin: 40 })
    expect(few.ok && few.value.bedsScored).toBe(120)
    expect(few.ok && few.value.notes[0]).toContain('at most 40')
    expect(backtestFirm(records.slice(0, 3), PRIOR, AS_OF, 1)).toMatchObject({ ok: false, reason: expect.stringContaining('Too few beds') })
  })
})
