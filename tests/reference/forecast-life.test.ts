import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { BedForecastInput } from '@almanac/forecast/bed-forecast/bed-forecast-types'
import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import {
  cumulativeHazard,
  failureChance,
  meanResidualLife,
  quantile,
  remainingQuantile,
  survival,
} from '@almanac/forecast/lifetime/weibull'
import { PARAMETER_KEYS } from '@almanac/forecast/priors/forecast-parameters'
import { centralValues, parameterNodes } from '@almanac/forecast/priors/parameter-nodes'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { describe, expect, it } from 'vitest'

type Case = {
  dist: string
  attained: number
  mu: number
  scale: number
  S_attained: number
  p: number[]
  remaining_quantile: number[]
  prob_fail_in_30_unit_buckets: number[]
  mean_residual_life: number
}
const file = path.join(import.meta.dirname, 'data/conditional_remaining_life.json')
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: Case[] }).cases.filter((item) => item.dist === 'weibull')
const relative = (value: number, expected: number) => Math.abs(value / expected - 1)

describe('Weibull life', () => {
  it('has the moments of textbooks: shape 3, scale 12, median 10.6200, B10 5.6677, mean 10.7158 (mean = 12 Γ(4/3))', () => {
    const life = { shape: 3, scale: 12 }
    expect(quantile(life, 0.5)).toBeCloseTo(10.62, 4)
    expect(quantile(life, 0.1)).toBeCloseTo(5.6677, 4)
    expect(meanResidualLife(life, 0)).toBeCloseTo(10.7158, 4)
  })

  it('keeps its digits in both tails', () => {
    const life = { shape: 3, scale: 10 }
    // (1e-3)³ of hazard: the chance equals it to nine digits.
    expect(relative(failureChance(life, 0.01), 1e-9)).toBeLessThan(1e-8)
    expect(survival(life, 80)).toBeGreaterThan(0)
    // At twenty times the scale survival is e^−8000, yet remaining life must be exact: extra hazard ln 2 over a hazard rate of 3·20²/10.
    expect(relative(remainingQuantile(life, 200, 0.5), Math.LN2 / 120)).toBeLessThan(1e-4)
    expect(cumulativeHazard(life, -1)).toBe(0)
  })

  it.each(cases)('remaining life from $attained, location $mu (R survreg, lung)', (item) => {
    const life = { shape: 1 / item.scale, scale: Math.exp(item.mu) }
    expect(relative(survival(life, item.attained), item.S_attained)).toBeLessThan(1e-11)
    item.p.forEach(
      (p, i) =>
        void expect(relative(remainingQuantile(life, item.attained, p), item.remaining_quantile[i] ?? Number.NaN)).toBeLessThan(1e-10),
    )
    const h = cumulativeHazard(life, item.attained)
    item.prob_fail_in_30_unit_buckets.forEach((expected, i) => {
      const chance =
        Math.exp(h - cumulativeHazard(life, item.attained + 30 * i)) - Math.exp(h - cumulativeHazard(life, item.attained + 30 * (i + 1)))
      expect(relative(chance, expected)).toBeLessThan(1e-10)
    })
    expect(relative(meanResidualLife(life, item.attained), item.mean_residual_life)).toBeLessThan(1e-6)
  })
})

describe('the prior agrees with what is said of resin life', () => {
  const parameters = tradePriors()

  function life(disinfectant: 'free-chlorine' | 'chloramine' | 'none', mgL: number, crosslinkPercent = 8) {
    const input: BedForecastInput = {
      asOfDay: '2020-01-01',
      beginning: { earliestDay: '2020-01-01', latestDay: '2020-01-01' },
      lastSeenDay: '2020-01-01',
      crosslinkPercent,
      resinVolumeFt3: 1.5,
      gallonsPerDay: 138,
      water: {
        supplyPeriods: [{ fromDay: '2000-01-01', disinfectant, disinfectantMgL: mgL, hardnessGpg: 15, ironMgL: 0 }],
        tests: [],
        preTreatments: [],
      },
    }
    const result = forecastBed(input, parameters)
    if (!result.ok) throw new Error(result.reason)
    return result.value
  }

  it('12 to 15 years on clean water (common practice, no source)', () => {
    expect(life('none', 0).medianLifeYears).toBeGreaterThan(12)
    expect(life('none', 0).medianLifeYears).toBeLessThan(15)
  })

  it('about 10 years at up to 1 mg/L free chlorine, about half that above 2 (common practice, no source)', () => {
    expect(life('free-chlorine', 0.5).medianLifeYears).toBeCloseTo(10, 0)
    const strong = life('free-chlorine', 2.5).medianLifeYears
    expect(strong).toBeGreaterThan(4)
    expect(strong).toBeLessThan(6.5)
  })

  it('5 to 25 years holds nearly all lives on clean water (UFC 3-240-13FN §2-2.5.1.4)', () => {
    const value = life('none', 0)
    const at = (years: number) => value.curve.find((point) => Math.round(point.yearsSinceBeginning) === years)?.mid ?? Number.NaN
    expect(at(5) - at(25)).toBeGreaterThan(0.9)
  })

  it('10% crosslink outlasts 8 % (common practice, no source)', () => {
    expect(life('none', 0, 10).medianLifeYears).toBeGreaterThan(life('none', 0).medianLifeYears * 1.1)
  })

  it('is carried by nodes with exactly its mean and covariance', () => {
    const nodes = parameterNodes(parameters).map((node) => PARAMETER_KEYS.map((key) => Math.log(node[key])))
    const centre = PARAMETER_KEYS.map((key) => Math.log(centralValues(parameters)[key]))
    const size = PARAMETER_KEYS.length
    for (let i = 0; i < size; i++) {
      const mean = nodes.reduce((sum, node) => sum + (node[i] ?? 0), 0) / nodes.length
      expect(mean).toBeCloseTo(centre[i] ?? Number.NaN, 10)
      for (let j = 0; j < size; j++) {
        const product =
          nodes.reduce((sum, node) => sum + ((node[i] ?? 0) - (centre[i] ?? 0)) * ((node[j] ?? 0) - (centre[j] ?? 0)), 0) / nodes.length
        expect(product).toBeCloseTo(parameters.logCovariance[i * size + j] ?? Number.NaN, 10)
      }
    }
  })
})
