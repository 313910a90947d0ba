import { seeded } from '@almanac/forecast/numeric/seeded'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { describe, expect, it } from 'vitest'
import { type CoverageTrial, coverageTrial, STUDIED, tallyCoverage } from '../../scripts/bench/simulate/coverage-study.ts'

const REPETITIONS = 60
const SEED = 20_260_101

/** Two-sided normal point of one in 10,000: of ten shares, an honest method keeps all within in 999 runs of 1,000. */
const Z = 3.89

describe('80% intervals on simulated firms with known truth', () => {
  it(`hold the truth about four times in five (seed ${SEED}, ${REPETITIONS} firms; npm run bench -- coverage has thousands)`, () => {
    const prior = tradePriors()
    const trials: CoverageTrial[] = []
    for (let i = 0; i < REPETITIONS; i++) trials.push(...coverageTrial(60, seeded(SEED + 7919 * i), prior))
    const tally = tallyCoverage(trials)
    expect(tally.map((row) => row.name)).toEqual([...STUDIED, 'due date', 'failures of a month', 'failures of a year'])
    const bound = Z * Math.sqrt((0.8 * 0.2) / REPETITIONS)
    for (const { name, coverage } of tally) expect(Math.abs(coverage - 0.8), `${name}: ${coverage}`).toBeLessThan(bound)
    // All ten together are a sharper witness than each: intervals half as wide would hold the truth in 48 of 100. Shares of one firm hang together, hence the whole bound.
    const mean = tally.reduce((sum, row) => sum + row.coverage, 0) / tally.length
    expect(Math.abs(mean - 0.8)).toBeLessThan(Z * Math.sqrt((0.8 * 0.2) / REPETITIONS / 2))
  }, 900_000)
})
