import { readFileSync } from 'node:fs'
import path from 'node:path'
import { lifeLikelihood, lifeTable } from '@almanac/forecast/fit/life-likelihood'
import { LIFE_FAMILIES } from '@almanac/forecast/lifetime/life-family'
import { hermiteNodes } from '@almanac/forecast/numeric/gauss-hermite'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../support/read-csv.ts'

type Reference = { theta: number[]; scale: number; tau: number; loglik: number }
const data = (name: string) => path.join(import.meta.dirname, 'data', name)

describe('what effects of groups are integrated with', () => {
  it('uses Hermite nodes that integrate polynomials exactly: ∫ x⁸ e^(−x²) = 105√π/16', () => {
    const sum = hermiteNodes(25).reduce((total, { x, weight }) => total + weight * Math.exp(-x * x) * x ** 8, 0)
    expect(sum).toBeCloseTo((105 * Math.sqrt(Math.PI)) / 16, 10)
    expect(hermiteNodes(25)).toHaveLength(25)
  })

  it('sums to the marginal likelihood of 40 firms as R has it, with R’s own rule: 401 trapezoid nodes over eight standard deviations', () => {
    const file = JSON.parse(readFileSync(data('sim2400.json'), 'utf8')) as { hierarchical_left_truncated_weibull: Reference }
    const { theta, scale, tau, loglik } = file.hierarchical_left_truncated_weibull
    const [first = 0, ...rest] = theta.slice(0, 3)
    let sum = 0
    for (const rows of Map.groupBy(readCsv(data('sim2400.csv')), (row) => row.company).values()) {
      const table = lifeTable(
        rows.map((row) => ({
          lower: Number(row.exit),
          upper: row.event === '1' ? Number(row.exit) : Number.POSITIVE_INFINITY,
          entry: Number(row.entry),
          covariates: [Number(row.x1), Number(row.x2)],
        })),
        2,
      )
      const terms = Array.from({ length: 401 }, (_, i) => {
        const u = -8 + (16 * i) / 400
        const at = [first + tau * u, ...rest, Math.log(scale)]
        return (
          Math.log((16 / 400) * Math.exp(-u * u * 0.5)) -
          0.5 * Math.log(2 * Math.PI) +
          lifeLikelihood(table, LIFE_FAMILIES.weibull, at).value
        )
      })
      const top = Math.max(...terms)
      sum += top + Math.log(terms.reduce((total, term) => total + Math.exp(term - top), 0))
    }
    expect(Math.abs(sum - loglik)).toBeLessThan(1e-7 * Math.abs(loglik))
  })

  it.each([2, 7, 9, 15, 61])('finds %d Hermite nodes, each once, right for x²', (count) => {
    const nodes = hermiteNodes(count)
    expect(nodes).toHaveLength(count)
    expect(nodes.reduce((sum, { x, weight }) => sum + weight * Math.exp(-x * x) * x * x, 0)).toBeCloseTo(Math.sqrt(Math.PI) / 2, 11)
  })
})
