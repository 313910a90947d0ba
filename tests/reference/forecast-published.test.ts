import { fitLifetime } from '@almanac/forecast/fit/fit-lifetime'
import type { LifeRecord } from '@almanac/forecast/lifetime/life-record'
import { describe, expect, it } from 'vitest'
import { exact, life, off, RUNNING_CAGES, running } from '../support/life-records.ts'

describe('published Weibull fits', () => {
  const weibull = (records: LifeRecord[]) => {
    const result = fitLifetime(records, 'weibull')
    if (!result.ok) throw new Error(result.reason)
    const { coefficients, scale, logLikelihood } = result.value
    return { shape: 1 / scale, scale: Math.exp(coefficients[0] ?? Number.NaN), logLikelihood }
  }

  it('NIST/SEMATECH e-Handbook 8.4.1.3: ten failures, ten units running at 500', () => {
    const fit = weibull([...exact(54, 187, 216, 240, 244, 335, 361, 373, 375, 386), running(500, 10)])
    expect(fit.shape).toBeCloseTo(1.7208, 4)
    expect(fit.scale).toBeCloseTo(606.528, 2)
    expect(fit.logLikelihood).toBeCloseTo(-75.135, 3)
  })

  it('scipy, test_continuous_fit_censored, Weibull: 2.149, 28.99', () => {
    const failed = exact(3, 5, 8, 15, 22, 23, 29, 32, 35, 40, 26, 28, 21)
    const fit = weibull([...failed, ...[6, 10, 11, 20, 27, 33, 24].map((age) => running(age))])
    expect(fit.shape).toBeCloseTo(2.149, 3)
    // Published to four digits by another program's optimiser, whose last digit is short by 0.006.
    expect(off(fit.scale, 28.99)).toBeLessThan(1e-3)
  })

  it('bearing cages (Meeker & Escobar 1998), figures derived from the published data', () => {
    const fit = weibull([...exact(230, 334, 423, 990, 1009, 1510), ...RUNNING_CAGES.map(([age, count]) => running(age, count))])
    expect(fit.shape).toBeCloseTo(2.035319, 5)
    expect(fit.scale).toBeCloseTo(11792.18, 1)
    expect(fit.logLikelihood).toBeCloseTo(-76.4369, 4)
  })

  it('heat-exchanger tubes found cracked between inspections (Meeker & Escobar 1998), derived', () => {
    const cracked = [4, 5, 2].map((weight, year) => ({ lower: year, upper: year + 1, weight }))
    const fit = weibull([...cracked, running(1, 99), running(2, 95), running(3, 95)])
    expect(fit.shape).toBeCloseTo(1.345515, 6)
    expect(fit.scale).toBeCloseTo(23.61992, 4)
    expect(fit.logLikelihood).toBeCloseTo(-54.4147, 4)
  })

  it('late entry after the design of Hong, Meeker & McCalley 2009, derived; ignoring it is wrong in the known way', () => {
    const table: [number, number, number][] = [
      [0, 4.2, 1],
      [0, 9, 0],
      [0, 7.5, 1],
      [2, 11.3, 1],
      [3, 12, 0],
      [5, 9.8, 1],
      [6, 15.2, 1],
      [6, 14, 0],
      [8, 13.1, 1],
      [8, 17, 0],
      [10, 16.4, 1],
      [12, 18.5, 0],
      [1, 6.1, 1],
      [4, 10.7, 1],
      [7, 13, 0],
      [9, 19.3, 1],
    ]
    const fit = weibull(table.map(([entry, age, failed]) => life(age, failed === 1, [], entry)))
    expect(fit.shape).toBeCloseTo(2.042245, 6)
    expect(fit.scale).toBeCloseTo(14.48952, 5)
    expect(fit.logLikelihood).toBeCloseTo(-33.08242, 5)
    const blind = weibull(table.map(([, age, failed]) => life(age, failed === 1, [])))
    expect(blind.shape).toBeCloseTo(2.687455, 5)
    expect(blind.scale).toBeCloseTo(16.00686, 4)
  })
})
