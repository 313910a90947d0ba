import { describe, expect, it } from 'vitest'
import { tradePriors } from '../priors/trade-priors.ts'
import { type CoverageTrial, coverageTrial, tallyCoverage } from './coverage-study.ts'

const REPETITIONS = 60
const SEED = 20_260_101

describe('80 % intervals on simulated firms with known truth', () => {
  it(`hold the truth about four times in five (seed ${SEED}, ${REPETITIONS} firms)`, () => {
    let s = SEED
    const random = () => {
      s = (16807 * s) % 2147483647
      return s / 2147483647
    }
    const prior = tradePriors()
    const trials: CoverageTrial[] = []
    for (let i = 0; i < REPETITIONS; i++) trials.push(...coverageTrial(80, random, prior))
    const tally = tallyCoverage(trials)
    expect(tally.map((row) => row.name)).toEqual(['medianCleanYears', 'shape', 'chloramineWeight', 'due date', 'failures of a year'])
    // Five binomial shares at 80 %: an honest method stays within 3.72 standard errors of each in 999 of 1,000 runs; half the width would cover 48 %.
    const bound = 3.72 * Math.sqrt((0.8 * 0.2) / REPETITIONS)
    for (const { name, coverage } of tally) expect(Math.abs(coverage - 0.8), `${name}: ${coverage}`).toBeLessThan(bound)
  }, 60_000)
})
