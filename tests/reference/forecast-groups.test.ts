import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fitGroupedLifetime } from '@almanac/forecast/fit/fit-grouped-lifetime'
import { hermiteNodes } from '@almanac/forecast/numeric/gauss-hermite'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../support/read-csv.ts'

type Reference = { theta: number[]; scale: number; tau: number; loglik: number; company: number[]; eb_mean: number[]; eb_sd: number[] }
const data = (name: string) => path.join(import.meta.dirname, 'data', name)

describe('effects of groups by adaptive quadrature', () => {
  it('uses Hermite nodes that integrate polynomials exactly: ∫ x⁸ e^(−x²) = 105√π/16', () => {
    const sum = hermiteNodes(25).reduce((total, { x, weight }) => total + weight * Math.exp(-x * x) * x ** 8, 0)
    expect(sum).toBeCloseTo((105 * Math.sqrt(Math.PI)) / 16, 10)
    expect(hermiteNodes(25)).toHaveLength(25)
  })

  it('agrees with the marginal likelihood by 401 trapezoid nodes in R on 40 firms: 1e-7 in log-likelihood', () => {
    const file = JSON.parse(readFileSync(data('sim2400.json'), 'utf8')) as { hierarchical_left_truncated_weibull: Reference }
    const expected = file.hierarchical_left_truncated_weibull
    const rows = readCsv(data('sim2400.csv'))
    const records = rows.map((row) => ({
      lower: Number(row.exit),
      upper: row.event === '1' ? Number(row.exit) : Number.POSITIVE_INFINITY,
      entry: Number(row.entry),
      covariates: [Number(row.x1), Number(row.x2)],
    }))
    const result = fitGroupedLifetime(
      records,
      rows.map((row) => row.company ?? ''),
      'weibull',
      2,
    )
    if (!result.ok) throw new Error(result.reason)
    const fit = result.value
    expect(Math.abs(fit.logLikelihood - expected.loglik)).toBeLessThan(1e-7 * Math.abs(expected.loglik))
    fit.coefficients.forEach((value, i) => void expect(value).toBeCloseTo(expected.theta[i] ?? Number.NaN, 6))
    expect(fit.scale).toBeCloseTo(expected.scale, 6)
    expect(fit.groupSd).toBeCloseTo(expected.tau, 6)
    for (const { group, mean, sd } of fit.effects) {
      const i = expected.company.indexOf(Number(group))
      expect(mean).toBeCloseTo(expected.eb_mean[i] ?? Number.NaN, 5)
      expect(sd).toBeCloseTo(expected.eb_sd[i] ?? Number.NaN, 5)
    }
  })

  it('refuses two groups with a sentence', () => {
    const records = [3, 5, 8, 9].map((age) => ({ lower: age, upper: age }))
    expect(fitGroupedLifetime(records, ['a', 'a', 'b', 'b'], 'weibull')).toMatchObject({
      ok: false,
      reason: expect.stringContaining('three groups'),
    })
  })
})
