import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fitLifetime } from '@almanac/forecast/fit/fit-lifetime'
import { LIFE_FAMILIES, type LifeFamilyName } from '@almanac/forecast/lifetime/life-family'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../support/read-csv.ts'

type Case = { name: string; dist: LifeFamilyName | 'exponential'; predict: { rows: number | number[]; p: number[]; quantile: number[][] } }
const data = (name: string) => path.join(import.meta.dirname, 'data', name)
const { cases } = JSON.parse(readFileSync(data('survreg_right_censored.json'), 'utf8')) as { cases: Case[] }
const aml = cases.flatMap(({ dist, ...item }) => (item.name.startsWith('aml') && dist !== 'exponential' ? [{ ...item, dist }] : []))

const records = readCsv(data('third-party/aml.csv')).map((row) => ({
  lower: Number(row.time),
  upper: row.status === '1' ? Number(row.time) : Number.POSITIVE_INFINITY,
  covariates: [row.x === 'Nonmaintained' ? 1 : 0],
}))

describe('each family on the AML data (R survreg)', () => {
  it.each(aml)('puts the predicted quantiles of $name at their survival', ({ dist, predict }) => {
    const fit = fitLifetime(records, dist, 1)
    if (!fit.ok) throw new Error(fit.reason)
    const { coefficients, scale } = fit.value
    const survivalAt = (t: number, x: number) => {
      const out = new Float64Array(3)
      LIFE_FAMILIES[dist].logSurvival((Math.log(t) - (coefficients[0] ?? Number.NaN) - (coefficients[1] ?? Number.NaN) * x) / scale, out)
      return Math.exp(out[0] ?? Number.NaN)
    }
    predict.quantile.forEach((line, row) => {
      line.forEach((t, i) => void expect(survivalAt(t, row)).toBeCloseTo(1 - (predict.p[i] ?? Number.NaN), 8))
    })
  })
})
