import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { BedForecastInput } from '@almanac/forecast/bed-forecast/bed-forecast-types'
import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import { conditionalFailureChance, weibullFromMedian } from '@almanac/forecast/lifetime/weibull'
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
}
const file = path.join(import.meta.dirname, 'data/conditional_remaining_life.json')
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: Case[] }).cases.filter((item) => item.dist === 'weibull')
const relative = (value: number, expected: number) => Math.abs(value / expected - 1)

describe('Weibull life', () => {
  it('has the median of textbooks: shape 3, scale 12, median 12 · (ln 2)^⅓ = 10.6200', () => {
    expect(weibullFromMedian(10.62, 3).scale).toBeCloseTo(12, 3)
  })

  it('keeps its digits in both tails', () => {
    const life = { shape: 3, scale: 10 }
    // (1e-3)³ of hazard: the chance equals it to nine digits.
    expect(relative(conditionalFailureChance(life, 0, 0.01), 1e-9)).toBeLessThan(1e-8)
    // At twenty times the scale survival is e^−8000, yet what follows is exact: extra hazard of a day at a hazard rate of 3·20²/10 a year.
    expect(relative(conditionalFailureChance(life, 200, 1e-5), 1.2e-3)).toBeLessThan(1e-3)
  })

  it.each(cases)('failures after $attained, location $mu (R survreg, lung)', (item) => {
    const life = { shape: 1 / item.scale, scale: Math.exp(item.mu) }
    expect(relative(1 - conditionalFailureChance(life, 0, item.attained), item.S_attained)).toBeLessThan(1e-11)
    item.p.forEach(
      (p, i) =>
        void expect(relative(conditionalFailureChance(life, item.attained, item.remaining_quantile[i] ?? Number.NaN), p)).toBeLessThan(
          1e-10,
        ),
    )
    let before = 0
    item.prob_fail_in_30_unit_buckets.forEach((chance, i) => {
      before += chance
      expect(relative(conditionalFailureChance(life, item.attained, 30 * (i + 1)), before)).toBeLessThan(1e-10)
    })
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
